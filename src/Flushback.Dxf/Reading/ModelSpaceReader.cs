using System.Collections.Immutable;
using Flushback.Dxf.Drawings;
using Flushback.Dxf.Reading.Entities;
using Flushback.Dxf.Tags;

namespace Flushback.Dxf.Reading;

/// <summary>Reads what is seen in model space into shapes.</summary>
internal sealed class ModelSpaceReader
{
    private readonly TagFile file;
    private readonly LayerTable layers;
    private readonly ReadingLog log;
    private readonly DxfLimits limits;
    private readonly PlaneMap toMillimetres;
    private readonly EntityRecords records;
    private readonly EntityCurves curves;
    private readonly ShapeMaker shapeMaker;
    private readonly ImmutableArray<DxfShape>.Builder shapes = ImmutableArray.CreateBuilder<DxfShape>();
    private int entities;
    private int edges;

    /// <param name="file">The file.</param>
    /// <param name="layers">Its layers.</param>
    /// <param name="millimetresPerUnit">What its unit is worth.</param>
    /// <param name="options">Limits and tolerances.</param>
    /// <param name="log">Where everything is told.</param>
    public ModelSpaceReader(
        TagFile file,
        LayerTable layers,
        double millimetresPerUnit,
        DxfReadOptions options,
        ReadingLog log
    )
    {
        this.file = file;
        this.layers = layers;
        this.log = log;
        limits = options.Limits;
        toMillimetres = PlaneMap.Scaled(millimetresPerUnit);
        records = new EntityRecords(file, new NamePool(file), log);
        curves = new EntityCurves(file, log, options.CurveToleranceMm / millimetresPerUnit);
        shapeMaker = new ShapeMaker(log, limits.MaxCoordinateMm);
    }

    /// <summary>The shapes of the ENTITIES sections.</summary>
    public ImmutableArray<DxfShape> Read(Sections sections, CancellationToken ct)
    {
        foreach (Range section in sections.Named("ENTITIES"))
        {
            (int first, int count) = section.GetOffsetAndLength(file.Tags.Count);
            ReadRun(first, first + count, ct);
        }

        return shapes.DrainToImmutable();
    }

    private void ReadRun(int first, int end, CancellationToken ct)
    {
        int i = first;
        while (i < end && !log.IsHopeless)
        {
            if (file.Tags[i].Code != 0)
            {
                log.Error(
                    DxfIssueCodes.Structure,
                    $"At {file.Place(file.Tags[i].Line)} stands group {Wording.Whole(file.Tags[i].Code)} where an entity "
                        + "should begin with group 0; export the drawing again.",
                    file.Tags[i].Line
                );
                return;
            }

            if ((++entities & 0x3FF) == 0)
            {
                ct.ThrowIfCancellationRequested();
            }

            EntityRecord record = records.At(i, end);
            i = record.FollowersEnd;
            if (entities > limits.MaxEntities)
            {
                log.LimitExceeded(
                    $"The drawing has more than {Wording.Whole(limits.MaxEntities)} entities (reached at "
                        + $"{record.Place}); leave out what is not needed, or raise the limit.",
                    record.Line
                );
                return;
            }

            Take(record);
        }
    }

    private void Take(in EntityRecord record)
    {
        DxfLayer layer = layers.Named(record.Layer);
        if (record.IsInPaperSpace)
        {
            log.LeftOut(record, DxfIssueCodes.PaperSpace, "lies in paper space", "lie in paper space");
        }
        else if (record.IsInvisible)
        {
            log.LeftOut(record, DxfIssueCodes.LayerHidden, "is switched invisible", "are switched invisible");
        }
        else if (!layer.IsVisible)
        {
            string state = layer.IsFrozen ? "frozen" : "off";
            log.LeftOut(
                record,
                DxfIssueCodes.LayerHidden,
                $"lies on a layer that is {state}",
                $"lie on a layer that is {state}"
            );
        }
        else if (curves.Of(record) is { } placed)
        {
            AddShape(record, placed);
        }
    }

    private void AddShape(in EntityRecord record, in PlacedCurve placed)
    {
        if (shapeMaker.Make(record, placed.Curve, placed.Map.Then(toMillimetres)) is not { } geometry)
        {
            return;
        }

        edges += geometry switch
        {
            OpenChain chain => chain.Edges.Length,
            ClosedOutline closed => closed.Outline.Edges.Length,
            _ => 1,
        };
        if (edges > limits.MaxVertices)
        {
            log.LimitExceeded(
                $"The drawing has more than {Wording.Whole(limits.MaxVertices)} vertices (reached in {record.Label}); leave "
                    + "out what is not needed, or raise the limit.",
                record.Line
            );
            return;
        }

        shapes.Add(
            new DxfShape(record.Handle, record.Layer, record.Type, record.Line, geometry)
            {
                PlaceWord = record.PlaceWord,
            }
        );
    }
}
