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
            ["", "thou", "mm", "bench, thou", "bench, mm", "rests at", "snap, N mm", "takes over", "stress"],
            sheet.Stops.Select(stop =>
                (string[])
                    [
                        stop.Name,
                        stop.Thou,
                        stop.Mm,
                        stop.BenchThou,
                        stop.BenchMm,
                        stop.RestsAt,
                        stop.Snap,
                        stop.TakesOver,
                        $"{stop.Stress} MPa",
                    ]
            )
        );
        page.Gap();
        page.Table(
            ["", "contact", "force", "pressure, MPa", "yields first, MPa"],
            sheet.Contacts.Select(contact =>
                (string[])[contact.Stop, contact.Pair, contact.Force, contact.Pressure, contact.Yields]
            )
        );
        page.Gap();
        page.Facts(sheet.Facts);

        page.Section("In the handle: what a little more changes");
        page.Table(
            ["", "pull, N", "peak stress, MPa", "most lift off the bench"],
            sheet.Sensitivities.Select(row =>
                (string[])[row.IsThou ? "  " + row.Name : row.Name, row.Pull, row.Stress, row.Lift]
            )
        );
        page.Gap();
        page.Line(sheet.InProportion);

        page.Section("In the handle: through the rotation");
        page.Table(
            [
                "blade, deg",
                "thou",
                "bench",
                "force, N",
                "closing",
                "opening",
                "no friction",
                "energy, N mm",
                "stress, MPa",
            ],
            sheet.Rotation.Select(row =>
                (string[])
                    [
                        row.BladeAngle,
                        row.Thou,
                        row.BenchThou,
                        row.Force,
                        row.Closing,
                        row.Opening,
                        row.Frictionless,
                        row.Energy,
                        row.Stress,
                    ]
            )
        );
        page.Gap();
        page.Line(
            "Torques are those of the hand, in N mm: closing and without friction towards closed, opening towards open; with a minus the"
                + " spring drives the blade."
        );

        page.Section("In the handle: bending stress along the spring, MPa");
        page.Table(
            ["mm behind the pivot", "open", "where it is greatest"],
            sheet.Stress.Select(row => (string[])[row.BehindPivot, row.Open, row.Peak])
        );
        page.Gap();
        page.Line(sheet.Limits);
    }
}
