using Flushback.Reports.Sheets;

namespace Flushback.Reports.Terminal;

/// <summary>The handle on a terminal.</summary>
internal static class HandlePage
{
    public static void Write(TerminalPage page, HandleSheet sheet)
    {
        page.Section("In the handle");
        page.Line(sheet.Assumed);
        page.Gap();
        page.Table(
            ["", "thou", "bench, thou", "rests at, deg", "forces, N", "stress, MPa", "snap, N mm from deg"],
            sheet.Stops.Select(stop =>
                (string[])[stop.Name, stop.Lift, stop.Bench, stop.RestsAt, stop.Forces, stop.Stress, stop.Snap]
            )
        );
        page.Gap();
        page.Facts([.. sheet.Facts]);

        page.Section("In the handle, for 0.1 mm more of");
        page.Table(
            ["", "pull, N", "peak stress, MPa", "most lift off the bench, mm"],
            sheet.Sensitivities.Select(row => (string[])[row.Name, row.Pull, row.Stress, row.Lift])
        );
        page.Gap();
        page.Line(sheet.Limits);
    }
}
