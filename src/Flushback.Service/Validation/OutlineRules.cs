using System.Globalization;
using Flushback.Geometry;
using Flushback.Geometry.Checking;
using Flushback.Mechanism.Knives;
using Flushback.Service.Drawings;
using Flushback.Service.Errors;
using Flushback.Service.Limits;

namespace Flushback.Service.Validation;

/// <summary>What must hold for outlines whose numbers are in order: closed, simple, with an area.</summary>
internal sealed class OutlineRules(ServiceLimits limits, Violations violations)
{
    private readonly GeometryTolerances _tolerances = new() { CoordinateLimitMm = limits.CoordinateMm };

    /// <summary>Gathers the flaws of every outline of a knife.</summary>
    /// <param name="source">The knife and where it came from.</param>
    /// <param name="cancellation">Ends the search for crossings early.</param>
    public void Check(KnifeSource source, CancellationToken cancellation)
    {
        Check(source.Drawn.Blade, KnifeSubject.Blade, source, cancellation);
        Check(source.Drawn.Spring, KnifeSubject.Spring, source, cancellation);
        if (source.Drawn.Handle is { } handle)
        {
            Check(handle, KnifeSubject.Handle, source, cancellation);
        }
    }

    private void Check(Outline outline, KnifeSubject part, KnifeSource source, CancellationToken cancellation)
    {
        string name = $"The {part.ToString().ToLowerInvariant()}'s outline";
        Box bounds = outline.Bounds;
        if (!IsInRange(bounds.MinX, bounds.MinY) || !IsInRange(bounds.MaxX, bounds.MaxY))
        {
            violations.Add(
                SubjectFields.PathOf(part, source),
                "OUT_OF_RANGE",
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{name} reaches beyond the {limits.CoordinateMm:N0} mm either way that are read; look for an arc that is nearly a full circle."
                )
            );
            return;
        }

        foreach (OutlineFlaw flaw in OutlineCheck.FlawsOf(outline.Vertices.AsSpan(), _tolerances, cancellation))
        {
            violations.Add(
                SubjectFields.PathOf(part, source, flaw.VertexIndex),
                ReasonOf(flaw.Kind),
                $"{name} {WhatIsWrong(flaw)}"
            );
        }
    }

    // Written so that a number that is none is out of range.
    private bool IsInRange(double x, double y) =>
        Math.Abs(x) <= limits.CoordinateMm && Math.Abs(y) <= limits.CoordinateMm;

    private static string ReasonOf(OutlineFlawKind kind) =>
        kind switch
        {
            OutlineFlawKind.TooFewVertices => "TOO_FEW_VERTICES",
            OutlineFlawKind.NotFinite => "NOT_FINITE",
            OutlineFlawKind.CoordinateOutOfRange => "OUT_OF_RANGE",
            OutlineFlawKind.ZeroLengthEdge => "ZERO_LENGTH_EDGE",
            OutlineFlawKind.BulgeBetweenEqualPoints => "BULGE_BETWEEN_EQUAL_POINTS",
            OutlineFlawKind.ZeroArea => "ZERO_AREA",
            OutlineFlawKind.SelfCrossing => "SELF_CROSSING",
            OutlineFlawKind.SelfTouching => "SELF_TOUCHING",
            _ => "SELF_OVERLAPPING",
        };

    private static string WhatIsWrong(OutlineFlaw flaw)
    {
        string at = string.Create(CultureInfo.InvariantCulture, $"({flaw.At.X:0.####}, {flaw.At.Y:0.####}) mm");
        return flaw.Kind switch
        {
            OutlineFlawKind.TooFewVertices => "encloses nothing: two vertices make an outline only with an arc.",
            OutlineFlawKind.NotFinite => "has a number that is not finite; give finite ones.",
            OutlineFlawKind.CoordinateOutOfRange => $"has a vertex at {at}, out of range; move it to the origin.",
            OutlineFlawKind.ZeroLengthEdge =>
                $"has an edge of no length at {at}: two vertices in a row lie on one place; remove one of them.",
            OutlineFlawKind.BulgeBetweenEqualPoints =>
                $"has an arc that ends where it begins, at {at}; split it in two, or remove it.",
            OutlineFlawKind.ZeroArea => "encloses no area: it runs back along itself; draw it as a closed shape.",
            OutlineFlawKind.SelfCrossing => $"crosses itself at {at}; draw it so that it meets itself nowhere.",
            OutlineFlawKind.SelfTouching => $"touches itself at {at}; draw it so that it meets itself nowhere.",
            _ => $"runs along itself at {at}; remove the piece that is drawn twice.",
        };
    }
}
