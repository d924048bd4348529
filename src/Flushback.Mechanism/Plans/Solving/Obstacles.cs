using System.Collections.Immutable;
using Flushback.Geometry;
using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Findings;
using Flushback.Mechanism.Knives;

namespace Flushback.Mechanism.Plans.Solving;

/// <summary>Says what keeps a search from its targets and what would do it.</summary>
/// <param name="search">The search as it ended.</param>
/// <param name="freed">The same search with the open flat free to give as much as it can; null when it need not.</param>
/// <param name="settings">What was asked for.</param>
internal sealed class Obstacles(PlanSearch search, PlanSearch? freed, PlanSettings settings)
{
    // A rest angle this far out of its window is out of it: a tenth of a second of arc would not be seen.
    private const double AngleMarginRad = 1e-6;

    private const double ReadingMarginMm = 1e-5;

    /// <summary>All that stand in the way.</summary>
    public ImmutableArray<PlanObstacle> All()
    {
        StopReadings told = search.HasSettled ? search.Trial.Readings : search.Start;
        StopReading[] sliding = [.. told.Stops.Where(reading => !reading.Rests)];
        if (sliding.Length > 0)
        {
            return [.. sliding.Select(NoRest)];
        }

        if (search.Trial.Refused is { } refused)
        {
            Stop served =
                refused.Pass.Site.Blade == BladeFace.HalfStopFace ? Stop.HalfStop
                : refused.Pass.Site.Blade == BladeFace.OpenFlat ? Stop.Open
                : Stop.Closed;
            return
            [
                new PlanObstacle(
                    PlanConstraint.Metal,
                    served,
                    0,
                    refused.Problem.Sentence,
                    ["A new blade with more metal there would do it."]
                ),
            ];
        }

        if (!search.HasSettled)
        {
            return
            [
                new PlanObstacle(
                    PlanConstraint.NotSettled,
                    Stop.Closed,
                    0,
                    "The search for the least removal came to no end, because the contacts change with every depth tried; the passes given are its last.",
                    ["Make the first pass, read the dial, and plan again from there."]
                ),
            ];
        }

        List<PlanObstacle> found = [];
        if (!search.HasTipWindow)
        {
            found.Add(Tip());
        }

        foreach (StopReading reading in search.Trial.Readings.Stops)
        {
            if (At(reading) is { } obstacle)
            {
                found.Add(obstacle);
            }
        }

        return [.. found];
    }

    private static PlanObstacle NoRest(StopReading reading) =>
        new(
            PlanConstraint.NoRest,
            reading.Stop,
            0,
            $"The blade does not rest {Said.Of(reading.Stop)}, so there is no reading to bring to its target.",
            ["A new blade, or one that rests there, is needed before it can be fitted."]
        );

    private PlanObstacle? At(StopReading reading)
    {
        AngleWindow window = search.Windows[reading.Stop];
        if (!window.Contains(reading.RestAngle, AngleMarginRad))
        {
            return reading.Stop == Stop.Open ? OpenRest(reading, window) : Rest(reading, window);
        }

        return reading.Stop != Stop.Open && reading.LiftMm < LeastMm(reading.Stop) - ReadingMarginMm
            ? Low(reading)
            : null;
    }

    private static PlanObstacle Rest(StopReading reading, AngleWindow window) =>
        new(
            PlanConstraint.RestAngle,
            reading.Stop,
            0,
            $"{Outside(reading, window)}, and slices of its face do not bring it there.",
            ["Give the face two contacts well apart (a relief in its middle), or widen the window."]
        );

    private static string Outside(StopReading reading, AngleWindow window) =>
        $"The blade rests {Said.Of(reading.Stop)} at {Said.Degrees(reading.RestAngle.Degrees)}, outside {Said.Degrees(window.Least.Degrees)} to {Said.Degrees(window.Most.Degrees)}";

    private PlanObstacle OpenRest(StopReading reading, AngleWindow window)
    {
        OpenRemedies others = new(search, settings);
        List<string> remedies = [];
        FaceDepths? flat =
            freed is { HasSettled: true, Trial.Refused: null }
            && window.Contains(freed.Trial.Readings.Stops[0].RestAngle, AngleMarginRad)
                ? freed.OpenFlat.Wanted
                : null;
        if (flat is { } depths)
        {
            remedies.Add(
                $"Take {Said.Length(depths.FrontMm)} off the front of the open flat and {Said.Length(depths.RearMm)} off its rear instead of at most {Said.Length(search.OpenFlat.MostMm)}."
            );
        }

        double? radius = others.CornerRadiusMm();
        if (radius is { } mm)
        {
            remedies.Add(
                $"Ask for a least corner radius of {Said.Length(mm)} instead of {Said.Length(settings.LeastCornerRadiusMm)}: it is the rounds that let the blade open so far."
            );
        }

        if (others.AtShoulder() is { } atShoulder)
        {
            remedies.Add(atShoulder);
        }

        remedies.Add("Widen the window.");
        return new PlanObstacle(
            PlanConstraint.RestAngle,
            Stop.Open,
            0,
            $"{Outside(reading, window)}, and no pass of the plan brings it there.",
            [.. remedies],
            flat?.DeeperMm,
            CornerRadiusMm: radius
        );
    }

    private double? OpenFlatNeeded(Stop stop)
    {
        bool reaches =
            freed is { HasSettled: true, Trial.Refused: null }
            && freed.Trial.Readings.At(stop) is { } reading
            && reading.LiftMm > LeastMm(stop) - ReadingMarginMm;
        return reaches ? freed!.OpenFlat.WantedMm : null;
    }

    private double LeastMm(Stop stop) => settings.AimMm(stop) - settings.Targets.For(stop).ToleranceMm;

    private PlanObstacle Tip()
    {
        LengthWindow depth = settings.TipDepth!.Value;
        return new PlanObstacle(
            PlanConstraint.TipDepth,
            Stop.Closed,
            0,
            $"At no closed angle in the window the tip lies {Said.Length(depth.LeastMm)} to {Said.Length(depth.MostMm)} inside the handle.",
            ["Shorten the tip, last, in the handle; or widen one of the two windows; or make a new blade."]
        );
    }

    private PlanObstacle Low(StopReading reading)
    {
        double shortMm = settings.AimMm(reading.Stop) - reading.LiftMm;
        double? open = OpenFlatNeeded(reading.Stop);
        List<string> remedies = [];
        if (open is { } needed)
        {
            remedies.Add(
                $"Lower the open flat by {Said.Length(needed)} in all instead of at most {Said.Length(search.OpenFlat.MostMm)}: every other stop then reads higher by as much as the spring drops open."
            );
        }

        if (freed?.OpenFlat.Problem is { } problem)
        {
            remedies.Add(
                $"Clear what keeps the open flat from going lower than {Said.Length(freed.OpenFlat.MostMm)}: {problem.Sentence}"
            );
        }

        Remedies others = new(search.Trial, search.Windows[Stop.Open], settings, reading.Stop);
        double? nose = others.ThinnerNoseMm();
        if (nose is { } thinner)
        {
            remedies.Add(
                $"Lower the spring's nose by {Said.Length(thinner)} at the rear of its underside and by nothing in front: open bears there and drops more."
            );
        }

        Vector? pivot = others.PivotMoveMm();
        if (pivot is { } move)
        {
            remedies.Add(
                $"Move the pivot's hole in the blade by about {Said.Length(Math.Abs(move.X))} {(move.X < 0 ? "to the rear" : "to the front")} and {Said.Length(Math.Abs(move.Y))} {(move.Y < 0 ? "away from the spine" : "towards the spine")}, and read all stops again: the others move too."
            );
        }

        double? face = others.ProuderFaceMm();
        string prouder = face is { } prouderMm ? $"about {Said.Length(prouderMm)} prouder" : "prouder";
        remedies.Add(
            $"A new blade whose {(reading.Stop == Stop.HalfStop ? "half-stop face" : "closed face")} stands {prouder} would do it."
        );
        return new PlanObstacle(
            PlanConstraint.ReadsLow,
            reading.Stop,
            shortMm,
            $"The dial reads {Said.Reading(reading.LiftMm)} {Said.Of(reading.Stop)} at best, {Said.Length(shortMm)} below {Said.Reading(settings.AimMm(reading.Stop))}, and no pass on its face raises it.",
            [.. remedies],
            open,
            pivot,
            face,
            ThinnerNoseMm: nose
        );
    }
}
