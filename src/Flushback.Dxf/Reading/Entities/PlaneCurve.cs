using System.Collections.Immutable;
using Flushback.Geometry;

namespace Flushback.Dxf.Reading.Entities;

/// <summary>What one entity draws, in the units of the file, before it is placed.</summary>
internal abstract record PlaneCurve;

/// <summary>Lines and arcs end to end; may hold edges of no length, as the file does.</summary>
internal sealed record EdgePath(ImmutableArray<Edge> Edges, bool IsClosed) : PlaneCurve;

/// <summary>A full circle.</summary>
internal sealed record CirclePath(Circle Circle) : PlaneCurve;

/// <summary>A curve and the map from its own plane into the drawing's.</summary>
internal readonly record struct PlacedCurve(PlaneCurve Curve, PlaneMap Map);
