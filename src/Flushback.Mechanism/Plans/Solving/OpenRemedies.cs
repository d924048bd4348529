using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Findings;
using Flushback.Mechanism.Knives;
using Flushback.Mechanism.Passes;

namespace Flushback.Mechanism.Plans.Solving;

/// <summary>What would bring the open blade into its window where the passes of a plan do not.</summary>
internal sealed class OpenRemedies(PlanSearch search, PlanSettings settings)
{
    // A radius is told to a few micrometres.
    private const int Halvings = 6;

    // More than this off an end face is another spring.
    private const double MostMm = 3;

    private const double EnoughRad = 1e-5;

    private readonly AngleWindow _window = search.Windows[Stop.Open];
    private readonly StopReading _open = search.Trial.Readings.Stops[0];

    /// <summary>A least corner radius, nearly the largest, with which the plan leaves the open blade in its window; null when there is none.</summary>
    public double? CornerRadiusMm()
    {
        bool IsInside(double radiusMm)
        {
            PlanSearch other = search.With(settings with { LeastCornerRadiusMm = radiusMm });
            return other is { HasSettled: true, Trial.Refused: null }
                && _window.Contains(other.Trial.Readings.Stops[0].RestAngle);
        }

        if (settings.LeastCornerRadiusMm <= 0 || !IsInside(0))
        {
            return null;
        }

        (double inside, double outside) = (0, settings.LeastCornerRadiusMm);
        for (int i = 0; i < Halvings; i++)
        {
            double middle = (inside + outside) / 2;
            (inside, outside) = IsInside(middle) ? (middle, outside) : (inside, middle);
        }

        return inside;
    }

    /// <summary>What would do it at shoulder and end face, where these hold the blade: a sentence, or null.</summary>
    public string? AtShoulder()
    {
        if (!_open.Contacts.Any(IsAtShoulder))
        {
            return null;
        }

        return _open.RestAngle > _window.Most
            ? OffEndFaceMm() is { } off
                ? $"Take {Said.Length(off)} off the spring's end face, all along: the blade then opens further."
                : null
            : $"A spring whose end face stands about {Said.Length(ProuderMm())} further to the front would do it, or a new blade whose shoulder stands as much further to the rear.";
    }

    private static bool IsAtShoulder(Contact contact) => !OpenFlatNeed.IsOnFlat(contact);

    /// <summary>Off the end face until the blade opens to the edge of its window.</summary>
    private double? OffEndFaceMm()
    {
        double? Off(double mm)
        {
            FlatSlice slice = new(Site.On(SpringFace.EndFace)) { FrontDepthMm = mm, RearDepthMm = mm };
            return
                PassCut.Make(search.Trial.Knife, search.Trial.Readings, slice, settings.Simulation.Passes).Result
                    is { } cut
                ? OffRad(StopCheck.Run(cut.Knife, settings.Simulation.Bench).Readings.Stops[0])
                : null;
        }

        return ChangeAmount.Find(OffRad(_open), Off, EnoughRad, MostMm);
    }

    private double OffRad(StopReading open) => (open.RestAngle - _window.Most).Radians;

    /// <summary>How much further out the end face would have to stand, to first order.</summary>
    private double ProuderMm()
    {
        double perMm =
            RestGradient
                .Of(search.Trial.Knife, _open)
                ?.Change((_, _, contact) => IsAtShoulder(contact) ? -1 : 0)
                .AngleRad
            ?? 0;
        return (_window.Least - _open.RestAngle).Radians / perMm;
    }
}
