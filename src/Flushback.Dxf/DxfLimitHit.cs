namespace Flushback.Dxf;

/// <summary>Which limit a drawing went over.</summary>
/// <param name="Name">Name of the property of <see cref="Reading.DxfLimits"/>.</param>
/// <param name="Allowed">The limit.</param>
/// <param name="Value">What the drawing has; where the counting stopped at the limit, the first amount beyond it.</param>
public sealed record DxfLimitHit(string Name, double Allowed, double Value);
