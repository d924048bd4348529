namespace Flushback.Cli.Regression.Baselines;

/// <summary>Holds a snapshot against its baseline.</summary>
internal static class Comparison
{
    private const double MmPerThou = 0.0254;

    /// <summary>Everything that is not as before, in the order of the report; what is off by no more than its allowance is as before.</summary>
    public static IReadOnlyList<Change> Of(Snapshot before, Snapshot after)
    {
        List<Change?> all =
        [
            .. Paired(before.Words, after.Words, word => word.Name).Select(pair => Of(pair.Before, pair.After)),
            .. Paired(before.Numbers, after.Numbers, number => number.Name).Select(pair => Of(pair.Before, pair.After)),
            .. Paired(before.Curves, after.Curves, curve => curve.Name).SelectMany(pair => Of(pair.Before, pair.After)),
            .. Paired(before.Outlines.Parts, after.Outlines.Parts, part => part.Name)
                .Select(pair => Of(pair.Before, pair.After, before.Outlines.WithinMm)),
            .. Paired(before.Outlines.Pins, after.Outlines.Pins, pin => pin.Name)
                .Select(pair => Of(pair.Before, pair.After, before.Outlines.WithinMm)),
        ];
        return [.. all.OfType<Change>()];
    }

    /// <summary>A snapshot that keeps what its baseline allows each number, which may have been set by hand.</summary>
    public static Snapshot WithAllowancesOf(Snapshot before, Snapshot after)
    {
        Dictionary<string, double> within = before.Numbers.ToDictionary(number => number.Name, number => number.Within);
        Dictionary<string, double> along = before.Curves.ToDictionary(curve => curve.Name, curve => curve.WithinMm);
        return after with
        {
            Numbers =
            [
                .. after.Numbers.Select(number =>
                    number with
                    {
                        Within = within.GetValueOrDefault(number.Name, number.Within),
                    }
                ),
            ],
            Curves =
            [
                .. after.Curves.Select(curve =>
                    curve with
                    {
                        WithinMm = along.GetValueOrDefault(curve.Name, curve.WithinMm),
                    }
                ),
            ],
            Outlines = after.Outlines with { WithinMm = before.Outlines.WithinMm },
        };
    }

    private static Change? Of(KeptWord? before, KeptWord? after) =>
        before?.Text == after?.Text
            ? null
            : new Change(
                (before ?? after)!.Name,
                before?.Text,
                after?.Text,
                Told((before ?? after)!.Name, before?.Text, after?.Text)
            );

    private static Change? Of(KeptNumber? before, KeptNumber? after)
    {
        if (before is not null && after is not null && before.Unit == after.Unit)
        {
            double off = after.Value - before.Value;
            return Math.Abs(off) <= before.Within
                ? null
                : Numbered(before, after, FormattableString.Invariant($"; {before.Within} {before.Unit} are allowed"));
        }

        return Numbered(before, after, "");
    }

    private static Change Numbered(KeptNumber? before, KeptNumber? after, string allowed)
    {
        (string? was, string? now) = (before is null ? null : Amount(before), after is null ? null : Amount(after));
        string name = (before ?? after)!.Name;
        return new Change(name, was, now, Told(name, was, now, allowed));
    }

    private static IEnumerable<Change> Of(KeptCurve? before, KeptCurve? after)
    {
        string name = $"{(before ?? after)!.Name}, curve";
        return before is null || after is null
            ? [new Change(name, Along(before), Along(after), Told(name, Along(before), Along(after)))]
            : CurveDrift.Between(before, after).Select(drift => Of(name, drift, before.WithinMm));
    }

    private static Change Of(string name, CurveDrift drift, double withinMm)
    {
        (string stretch, string most) =
            drift.FromDeg == drift.ToDeg
                ? (FormattableString.Invariant($"at {drift.FromDeg} degrees"), "")
                : (
                    FormattableString.Invariant($"between {drift.FromDeg} and {drift.ToDeg} degrees"),
                    FormattableString.Invariant($", most at {drift.MostDeg} degrees")
                );
        string said = drift switch
        {
            { WasMm: { } was, IsMm: { } now } => FormattableString.Invariant(
                $"the lift {stretch} differs by up to {Length(Math.Abs(now - was))}{most}; {withinMm} mm are allowed"
            ),
            { WasMm: null } => $"there is a lift {stretch} where none was read before",
            _ => $"there is no lift {stretch} any more",
        };
        return new Change(name, At(drift.WasMm), At(drift.IsMm), $"{name}: {said}.");

        string? At(double? lift) =>
            lift is { } mm ? FormattableString.Invariant($"{Length(mm)} at {drift.MostDeg} degrees") : null;
    }

    private static string? Along(KeptCurve? curve) =>
        curve is null ? null : FormattableString.Invariant($"{curve.LiftsMm.Count(lift => lift is not null)} angles");

    private static Change? Of(KeptPart? before, KeptPart? after, double withinMm)
    {
        string name = $"{(before ?? after)!.Name}, outline";
        if (before is null || after is null)
        {
            return new Change(name, Drawn(before), Drawn(after), Told(name, Drawn(before), Drawn(after)));
        }

        OutlineDrift drift = OutlineDrift.Between(before, after);
        return drift.Mm <= withinMm
            ? null
            : new Change(
                name,
                Drawn(before),
                Drawn(after),
                FormattableString.Invariant(
                    $"{name}: off by up to {Length(drift.Mm)} at x {drift.X:0.00}, y {drift.Y:0.00}; {withinMm} mm are allowed."
                ),
                (drift.X, drift.Y)
            );
    }

    private static Change? Of(KeptPin? before, KeptPin? after, double withinMm)
    {
        double off = before is null || after is null ? double.PositiveInfinity : Off(before, after);
        if (off <= withinMm)
        {
            return null;
        }

        string name = (before ?? after)!.Name;
        return new Change(name, Place(before), Place(after), Told(name, Place(before), Place(after)), At(after));
    }

    // Each thing of the new order with its fellow of the old, then those that are not there any more.
    private static IEnumerable<(T? Before, T? After)> Paired<T>(
        IReadOnlyList<T> before,
        IReadOnlyList<T> after,
        Func<T, string> name
    )
        where T : class
    {
        Dictionary<string, T> left = before.ToDictionary(name);
        foreach (T one in after)
        {
            left.Remove(name(one), out T? fellow);
            yield return (fellow, one);
        }

        foreach (T gone in before.Where(one => left.ContainsKey(name(one))))
        {
            yield return (gone, null);
        }
    }

    private static string Told(string name, string? was, string? now, string allowed = "") =>
        (was, now) switch
        {
            (null, _) => $"{name}: {now}, was not there before.",
            (_, null) => $"{name}: was {was}, is not there any more.",
            _ => $"{name}: {now}, was {was}{allowed}.",
        };

    private static string Amount(KeptNumber number) =>
        number.Unit == "mm" ? Length(number.Value) : FormattableString.Invariant($"{number.Value} {number.Unit}");

    private static string Length(double mm) =>
        FormattableString.Invariant($"{mm:0.0###} mm ({mm / MmPerThou:0.0#} thou)");

    private static string? Drawn(KeptPart? part) =>
        part is null ? null : FormattableString.Invariant($"{part.Vertices.Count} edges");

    private static string? Place(KeptPin? pin) =>
        pin is null
            ? null
            : FormattableString.Invariant($"{pin.Diameter:0.0###} mm at x {pin.X:0.00##}, y {pin.Y:0.00##}");

    private static (double X, double Y)? At(KeptPin? pin) => pin is null ? null : (pin.X, pin.Y);

    private static double Off(KeptPin before, KeptPin after) =>
        Math.Max(
            Math.Sqrt(((after.X - before.X) * (after.X - before.X)) + ((after.Y - before.Y) * (after.Y - before.Y))),
            Math.Abs(after.Diameter - before.Diameter)
        );
}
