using Flushback.Patterns.Parameters;

namespace Flushback.Patterns.Fitting;

/// <summary>A number that may be changed, with the scale on which its change counts.</summary>
/// <remarks>A lever's change is a share of the range between its limits: 0 as given, 1 from one limit to the other.</remarks>
/// <param name="Limit">The number.</param>
/// <param name="From">What it is on the page, filled in.</param>
internal sealed record Lever(PatternLimit Limit, double From)
{
    /// <summary>Least change.</summary>
    public double Least => Math.Min(0, (Limit.Least - From) / Range);

    /// <summary>Greatest change.</summary>
    public double Most => Math.Max(0, (Limit.Most - From) / Range);

    private double Range => Limit.Most - Limit.Least;

    /// <summary>The number with a change.</summary>
    public double At(double change) =>
        change == 0
            ? From
            : Math.Clamp(From + (change * Range), Math.Min(Limit.Least, From), Math.Max(Limit.Most, From));

    /// <summary>The change that leads to a value.</summary>
    public double ChangeTo(double value) => (value - From) / Range;
}
