using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Knives;
using Flushback.Mechanism.Measured;
using Flushback.Reports.Wording;

namespace Flushback.Reports.Sheets;

/// <summary>What the dial really read, beside what the drawing says and what would explain it, in words.</summary>
internal sealed record MeasuredFacts
{
    public required IReadOnlyList<MeasuredRow> Stops { get; init; }

    public required IReadOnlyList<Fact> Offsets { get; init; }

    public required string Remark { get; init; }

    public static MeasuredFacts Of(MeasuredKnife knife, Measure measure) =>
        new()
        {
            Stops = [.. RowsOf(knife, measure)],
            Offsets =
            [
                .. knife.Offsets.Select(offset => new Fact(FaceNames.Of(offset.Face), OffsetWords(offset, measure))),
            ],
            Remark =
                "These are the least offsets of the faces that explain the readings. The steel may differ from the drawing"
                + " in other ways too: read the dial after every pass, and plan again when it does not read as expected.",
        };

    private static IEnumerable<MeasuredRow> RowsOf(MeasuredKnife knife, Measure measure)
    {
        (Stop Stop, double? Mm)[] readings =
        [
            (Stop.HalfStop, knife.Measured.HalfStopMm),
            (Stop.Closed, knife.Measured.ClosedMm),
        ];
        foreach ((Stop stop, double? mm) in readings)
        {
            if (knife.Drawn.At(stop) is { } drawn)
            {
                yield return new MeasuredRow(
                    StopNames.Of(stop),
                    measure.Reading(drawn.LiftMm),
                    mm is { } read ? measure.Reading(read) : "not read"
                );
            }
        }

        if (knife.Measured.OpenHeightMm is { } height)
        {
            yield return new MeasuredRow("open, against the drawing", measure.Reading(0), measure.Reading(height));
        }
    }

    private static string OffsetWords(FaceOffset offset, Measure measure) =>
        offset switch
        {
            { FrontMm: 0, RearMm: 0 } => "as drawn",
            _ when offset.FrontMm == offset.RearMm => Against(offset.FrontMm, measure),
            _ => $"{Against(offset.FrontMm, measure)} in front, {Against(offset.RearMm, measure)} at the rear",
        };

    private static string Against(double mm, Measure measure) =>
        $"{measure.Length(Math.Abs(mm))} {(mm < 0 ? "lower" : "higher")} than drawn";
}

/// <summary>The dial at one stop, as drawn and as measured.</summary>
internal sealed record MeasuredRow(string Stop, string Drawn, string Measured);
