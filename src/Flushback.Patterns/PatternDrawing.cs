using System.Collections.Immutable;
using Flushback.Geometry;
using Flushback.Mechanism.Knives;
using Flushback.Patterns.Conflicts;
using Flushback.Patterns.Drawing;
using Flushback.Patterns.Layout;
using Flushback.Patterns.Parameters;

namespace Flushback.Patterns;

/// <summary>Draws a knife from a page of dimensions.</summary>
public static class PatternDrawing
{
    /// <summary>Draws the pattern so that the dial reads what is wanted at every true rest.</summary>
    /// <param name="parameters">The page of dimensions.</param>
    /// <param name="cancellation">Looked at once a pose of the spring.</param>
    /// <returns>The pattern, or which parameters are in conflict; exactly one of the two.</returns>
    /// <exception cref="OperationCanceledException">When cancelled.</exception>
    public static (DrawnPattern? Pattern, PatternConflict? Conflict) Make(
        PatternParameters parameters,
        CancellationToken cancellation = default
    )
    {
        ArgumentNullException.ThrowIfNull(parameters);
        if (PatternLimits.Violations(parameters).FirstOrDefault() is { } outside)
        {
            return (null, outside);
        }

        PatternLayout layout = new(parameters);
        if (LayoutConflicts(layout).FirstOrDefault() is { } conflict)
        {
            return (null, conflict);
        }

        DrawnPattern finished = Draw(layout);
        if (DrawnRules.Of(layout, finished).FirstOrDefault() is { } drawn)
        {
            return (null, drawn);
        }

        DrawnPattern pattern = WithStock(finished, layout.Dimensions.Stock, cancellation);
        PatternConflict? last =
            DrawnRules.Crossings(pattern).FirstOrDefault()
            ?? ProofRules.Of(layout, pattern, cancellation).FirstOrDefault();
        return last is null ? (pattern, null) : (null, last);
    }

    /// <summary>The conflicts that show before anything is drawn.</summary>
    internal static IEnumerable<PatternConflict> LayoutConflicts(PatternLayout layout) =>
        new Func<PatternLayout, IEnumerable<PatternConflict>>[]
        {
            GivenRules.Of,
            PinRules.Of,
            TangRules.Of,
            BladeRules.Of,
            SpringRules.Of,
            FollowingRules.Of,
        }.SelectMany(rules => rules(layout));

    private static DrawnPattern Draw(PatternLayout layout)
    {
        PatternParameters p = layout.Dimensions;
        (Outline blade, ImmutableArray<BladeFace> bladeFaces) = BladeDrawing.Draw(layout);
        (Outline spring, ImmutableArray<SpringFace> springFaces) = SpringDrawing.Draw(layout);
        Outline handle = HandleDrawing.Draw(layout.Handle);
        Circle pivot = new(Point.Origin, p.Pins.PivotDiameterMm / 2);
        Circle centre = new(layout.Spring.CentrePin, p.Pins.CentreDiameterMm / 2);
        Circle rearInSpring = new(layout.Rear.PinInSpring, p.Pins.RearDiameterMm / 2);
        Circle rearInHandle = rearInSpring with { Centre = layout.Rear.PinInHandle };
        PatternHole pivotHole = new(PinKind.Pivot, pivot);
        PatternHole centreHole = new(PinKind.Centre, centre);
        return new DrawnPattern
        {
            Parameters = layout.Given,
            Dimensions = p,
            Knife = new Knife
            {
                Blade = blade,
                BladeFaces = bladeFaces,
                Spring = spring,
                SpringFaces = springFaces,
                PivotRadiusMm = pivot.RadiusMm,
                CentrePin = centre,
                RearPin = rearInSpring,
                Handle = handle,
                DialPoint = layout.Spring.DialPoint,
                HasHalfStop = p.Tang.HasHalfStop,
            },
            Blade = new PatternPiece(
                PieceKind.Blade,
                blade,
                blade,
                [pivotHole],
                [new PatternMark(MarkKind.NailNick, BladeDrawing.Nick(layout))]
            ),
            Spring = new PatternPiece(
                PieceKind.Spring,
                spring,
                spring,
                [centreHole, new PatternHole(PinKind.Rear, rearInSpring)],
                []
            )
            {
                ThicknessMm = p.Spring.WidthMm,
            },
            Handle = new PatternPiece(
                PieceKind.Handle,
                handle,
                handle,
                [pivotHole, centreHole, new PatternHole(PinKind.Rear, rearInHandle)],
                [new PatternMark(MarkKind.Well, HandleDrawing.Well(layout))]
            )
            {
                Count = 2,
            },
            HandleLine = layout.Handle.Line.From(layout.Handle.FrontX, layout.Handle.ButtX),
            SpringToFree = layout.Spring.AsDrawn.Inverse,
        };
    }

    private static DrawnPattern WithStock(
        DrawnPattern pattern,
        StockParameters stock,
        CancellationToken cancellation
    ) =>
        pattern with
        {
            Blade = pattern.Blade with { Rough = RoughOutline.Of(pattern.Blade.Finished, stock.BladeMm, cancellation) },
            Spring = pattern.Spring with
            {
                Rough = RoughOutline.Of(pattern.Spring.Finished, stock.SpringMm, cancellation),
            },
        };
}
