namespace Flushback.Geometry.Tests.Shapes;

/// <summary>Comparison with a stated tolerance, in millimetres unless said.</summary>
internal static class Near
{
    /// <summary>Agreement of closed forms at the size of a knife.</summary>
    public const double ClosedForm = 1e-9;

    public static void Equal(double expected, double actual, double tolerance = ClosedForm) =>
        Assert.InRange(actual, expected - tolerance, expected + tolerance);

    public static void Equal(Point expected, Point actual, double tolerance = ClosedForm) =>
        Assert.True(expected.IsWithin(tolerance, actual), $"{actual} is not within {tolerance} of {expected}");
}
