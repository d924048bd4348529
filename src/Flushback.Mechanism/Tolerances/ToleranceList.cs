using System.Collections.Immutable;
using Flushback.Mechanism.Knives;
using Flushback.Mechanism.Passes;

namespace Flushback.Mechanism.Tolerances;

/// <summary>The tolerances of a knife and the dimensions they let vary, each above zero and on something the knife has.</summary>
public sealed record ToleranceList
{
    /// <summary>The faces whose profile may vary.</summary>
    public static IReadOnlyList<Site> Faces { get; } =
    [
        Site.On(BladeFace.OpenFlat),
        Site.On(BladeFace.Shoulder),
        Site.On(BladeFace.HalfStopFace),
        Site.On(BladeFace.Run),
        Site.On(BladeFace.ClosedFace),
        Site.On(BladeFace.Kick),
        Site.On(SpringFace.Underside),
        Site.On(SpringFace.EndFace),
    ];

    private ToleranceList(ImmutableArray<Tolerance> tolerances)
    {
        Tolerances = tolerances;
        Dimensions =
        [
            .. tolerances.SelectMany((tolerance, i) => DeviationsOf(tolerance).Select(d => new Dimension(i, d))),
        ];
    }

    /// <summary>The tolerances.</summary>
    public ImmutableArray<Tolerance> Tolerances { get; }

    /// <summary>What varies, those of one tolerance one after another.</summary>
    public ImmutableArray<Dimension> Dimensions { get; }

    /// <summary>The tolerances of a knife.</summary>
    public static ToleranceList For(Knife knife, ToleranceSettings settings)
    {
        bool inHandle = settings.Handle is not null;
        List<Tolerance> tolerances = [];
        Add(ToleranceKind.PivotHole, settings.PinsMm);
        Add(ToleranceKind.CentrePinHole, settings.PinsMm);
        Add(ToleranceKind.CentrePinPlace, settings.PinsMm);
        Add(ToleranceKind.RearPinPlace, inHandle ? settings.PinsMm : 0);
        Add(ToleranceKind.PivotPlay, settings.ClearanceMm);
        Add(ToleranceKind.CentrePinPlay, settings.ClearanceMm);
        foreach (Site face in Faces.Where(face => Has(knife, face)))
        {
            Add(ToleranceKind.Profile, settings.FaceProfilesMm.GetValueOrDefault(face, settings.ProfileMm), face);
        }

        Add(ToleranceKind.SpringDepth, inHandle ? settings.DepthMm : 0);
        Add(ToleranceKind.SpringWidth, inHandle ? settings.WidthMm : 0);
        Add(ToleranceKind.Preload, inHandle ? settings.PreloadMm : 0);
        return new ToleranceList([.. tolerances]);

        void Add(ToleranceKind kind, double mm, Site? face = null)
        {
            if (mm > 0)
            {
                tolerances.Add(new Tolerance(kind, face, mm));
            }
        }
    }

    /// <summary>The tolerance a dimension belongs to.</summary>
    public Tolerance Of(Dimension dimension) => Tolerances[dimension.Tolerance];

    // A kick drawn sharp is the end of the closed face, and varies with it.
    private static bool Has(Knife knife, Site face)
    {
        Workpiece piece = Workpiece.Of(knife, face.Part);
        return piece.RunOf(face) is { } run && (face.Blade != BladeFace.Kick || piece.EdgeAt(run.First).IsArc);
    }

    private static Deviation[] DeviationsOf(Tolerance tolerance) =>
        tolerance.Kind switch
        {
            ToleranceKind.PivotHole
            or ToleranceKind.CentrePinHole
            or ToleranceKind.CentrePinPlace
            or ToleranceKind.RearPinPlace => [Deviation.Forward, Deviation.Up],
            ToleranceKind.Profile => IsRound(tolerance.Face!.Value)
                ? [Deviation.Offset]
                : [Deviation.Offset, Deviation.Tilt],
            _ => [Deviation.Amount],
        };

    // A round has no front and rear that could lie askew to each other.
    private static bool IsRound(Site face) => face.Blade is BladeFace.Kick or BladeFace.Run;
}
