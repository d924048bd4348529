using Flushback.Mechanism.Handle;
using Flushback.Mechanism.Knives;
using Flushback.Reports.Wording;

namespace Flushback.Reports.Sheets;

/// <summary>A loaded contact in words: the force on it, its pressure, and where the softer part begins to yield.</summary>
internal sealed record HandleContactRow(string Stop, string Pair, string Force, string Pressure, string Yields)
{
    public static IReadOnlyList<HandleContactRow> AllOf(HandleReport report, Measure measure) =>
        [
            .. report.Stops.SelectMany(stop =>
                stop.Contacts.Select(contact => Of(StopNames.Of(stop.Stop), contact, report.Settings, measure))
            ),
        ];

    private static HandleContactRow Of(string stop, HandleContact contact, HandleSettings settings, Measure measure) =>
        new(
            stop,
            FaceNames.Of(contact.BladeFace, contact.SpringFace),
            measure.Force(contact.ForceN),
            contact.PressureMpa is { } pressure ? measure.Number(pressure, 0) : "no radius",
            contact.YieldPressureMpa is { } limit
                ? $"the {settings.SofterPart} at {measure.Number(limit, 0)}"
                : "not known"
        );
}
