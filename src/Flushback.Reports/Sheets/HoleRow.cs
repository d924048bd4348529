using System.Globalization;
using Flushback.Geometry;
using Flushback.Inspection;
using Flushback.Reports.Wording;

namespace Flushback.Reports.Sheets;

/// <summary>A round hole and its pin, in a row of each unit.</summary>
internal sealed record HoleRow
{
    public required string Number { get; init; }

    public required string Part { get; init; }

    public required string X { get; init; }

    public required string Y { get; init; }

    public required string Mm { get; init; }

    public required string Inches { get; init; }

    public required string Pin { get; init; }

    public required string WindowMm { get; init; }

    public required string WindowInches { get; init; }

    public required string Verdict { get; init; }

    public required string VerdictInches { get; init; }

    public required bool IsGood { get; init; }

    public static HoleRow Of(Circle circle, PinFit? fit, int number, int part, Measure measure)
    {
        double over = fit is null ? 0 : Math.Max(fit.HoleMm - fit.HighestMm, 0);
        double under = fit is null ? 0 : Math.Max(fit.LowestMm - fit.HoleMm, 0);
        return new HoleRow
        {
            Number = number.ToString(CultureInfo.InvariantCulture),
            Part = part.ToString(CultureInfo.InvariantCulture),
            X = measure.Mm(circle.Centre.X, 2),
            Y = measure.Mm(circle.Centre.Y, 2),
            Mm = measure.Mm(circle.DiameterMm),
            Inches = measure.Inches(circle.DiameterMm, 4),
            Pin = fit is null ? "none" : Printable.Of(fit.PinName),
            WindowMm = fit is null ? "" : $"{measure.Mm(fit.LowestMm)} to {measure.Mm(fit.HighestMm)}",
            WindowInches = fit is null
                ? ""
                : $"{measure.Inches(fit.LowestMm, 4)} to {measure.Inches(fit.HighestMm, 4)}",
            Verdict = fit switch
            {
                null => "",
                { Fits: true } => "fits",
                _ => over > 0 ? $"{measure.Mm(over)} over" : $"{measure.Mm(under)} under",
            },
            VerdictInches = fit is null or { Fits: true } ? "" : measure.Inches(over + under, 4),
            IsGood = fit is null or { Fits: true },
        };
    }
}
