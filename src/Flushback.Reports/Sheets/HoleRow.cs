using System.Globalization;
using Flushback.Geometry;
using Flushback.Inspection;
using Flushback.Reports.Wording;

namespace Flushback.Reports.Sheets;

/// <summary>A round hole and its pin, in a row of each unit.</summary>
internal sealed record HoleRow
{
    // A fit is ten micrometres wide, and inch pins are no round number of them.
    private const int Decimals = 4;

    public required string Number { get; init; }

    public required string Part { get; init; }

    public required string X { get; init; }

    public required string Y { get; init; }

    public required string Mm { get; init; }

    public required string Inches { get; init; }

    public required string Pin { get; init; }

    public required string WindowMm { get; init; }

    public required string WindowInches { get; init; }

    /// <summary><c>fits</c>, <c>over</c> or <c>under</c>; empty for a hole that is for no pin.</summary>
    public required string Verdict { get; init; }

    /// <summary>How far it is off; empty when it is not.</summary>
    public required string OffMm { get; init; }

    public required string OffInches { get; init; }

    public required bool IsGood { get; init; }

    public static HoleRow Of(Circle circle, PinFit? fit, int number, int part, Measure measure)
    {
        double off = fit is null ? 0 : Math.Max(Math.Max(fit.HoleMm - fit.HighestMm, fit.LowestMm - fit.HoleMm), 0);
        bool isOff = fit is { Fits: false };
        return new HoleRow
        {
            Number = number.ToString(CultureInfo.InvariantCulture),
            Part = part.ToString(CultureInfo.InvariantCulture),
            X = measure.Mm(circle.Centre.X, 2),
            Y = measure.Mm(circle.Centre.Y, 2),
            Mm = measure.Mm(circle.DiameterMm, Decimals),
            Inches = measure.Inches(circle.DiameterMm, Decimals),
            Pin = fit is null ? "none" : Printable.Of(fit.PinName),
            WindowMm = fit is null
                ? ""
                : $"{measure.Mm(fit.LowestMm, Decimals)} to {measure.Mm(fit.HighestMm, Decimals)}",
            WindowInches = fit is null
                ? ""
                : $"{measure.Inches(fit.LowestMm, Decimals)} to {measure.Inches(fit.HighestMm, Decimals)}",
            Verdict = fit switch
            {
                null => "",
                { Fits: true } => "fits",
                _ => fit.HoleMm > fit.HighestMm ? "over" : "under",
            },
            OffMm = isOff ? measure.Mm(off, Decimals) : "",
            OffInches = isOff ? measure.Inches(off, Decimals) : "",
            IsGood = !isOff,
        };
    }
}
