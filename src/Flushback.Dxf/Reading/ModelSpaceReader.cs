using System.Collections.Immutable;
using Flushback.Dxf.Drawings;
using Flushback.Dxf.Reading.Entities;
using Flushback.Dxf.Tags;

namespace Flushback.Dxf.Reading;

/// <summary>Reads what is seen in model space into shapes, blocks and all.</summary>
internal sealed class ModelSpaceReader
{
    private readonly TagFile _file;
    private readonly LayerTable _layers;
    private readonly BlockChoice _blockChoice;
    private readonly DrawingBudget _budget;
    private readonly ReadingLog _log;
    private readonly string _versionMark;
    private readonly double _millimetresPerUnit;
    private readonly EntityRecords _records;
    private readonly EntityCurves _curves;
    private readonly Inserts _inserts;
    private readonly ShapeMaker _shapeMaker;
    private readonly ImmutableArray<DxfShape>.Builder _shapes = ImmutableArray.CreateBuilder<DxfShape>();

    /// <param name="file">The file.</param>
    /// <param name="versionMark">The version it says it has; empty when it says none.</param>
    /// <param name="layers">Its layers.</param>
    /// <param name="blocks">Its blocks.</param>
    /// <param name="millimetresPerUnit">What its unit is worth.</param>
    /// <param name="options">Limits and tolerances.</param>
    /// <param name="log">Where everything is told.</param>
    public ModelSpaceReader(
        TagFile file,
        string versionMark,
        LayerTable layers,
        BlockTable blocks,
        double millimetresPerUnit,
        DxfReadOptions options,
        ReadingLog log
    )
    {
        _file = file;
        _versionMark = versionMark;
        _layers = layers;
        _log = log;
        _millimetresPerUnit = millimetresPerUnit;
        DxfLimits limits = options.Limits;
        _blockChoice = new BlockChoice(blocks, limits, log);
        _budget = new DrawingBudget(limits, log);
        _records = new EntityRecords(file, new NamePool(file), log);
        _curves = new EntityCurves(file, log, limits, options.CurveToleranceMm / millimetresPerUnit);
        _inserts = new Inserts(file, new NumberFields(file, log), log);
        _shapeMaker = new ShapeMaker(log, limits, options.CurveToleranceMm);
    }

    /// <summary>The shapes of the ENTITIES sections.</summary>
    public ImmutableArray<DxfShape> Read(Sections sections, CancellationToken ct)
    {
        foreach (Range section in sections.Named("ENTITIES"))
        {
            ReadRun(section.Start.Value, section.End.Value, Placement.ModelSpace(_millimetresPerUnit), ct);
        }

        return _shapes.DrainToImmutable();
    }

    private void ReadRun(int first, int end, Placement placement, CancellationToken ct)
    {
        int i = first;
        while (i < end && !_log.IsHopeless)
        {
            if (_file.Tags[i].Code != 0)
            {
                _log.Error(
                    DxfIssueCodes.Structure,
                    $"At {_file.Place(_file.Tags[i].Line)} stands group {Wording.Whole(_file.Tags[i].Code)} where an entity "
                        + "should begin with group 0; export the drawing again.",
                    _file.Tags[i].Line
                );
                return;
            }

            EntityRecord record = _records.At(i, end);
            i = record.FollowersEnd;
            if (_budget.TryTakeEntity(record, ct))
            {
                Take(placement.Seen(record), placement, ct);
            }
        }
    }

    private void Take(in EntityRecord record, Placement placement, CancellationToken ct)
    {
        // A block is hidden with its INSERT when that is frozen; when it is off, only what takes its layer is.
        DxfLayer layer = _layers.Named(record.Layer);
        bool isHidden = record.Type == "INSERT" ? layer.IsFrozen : !layer.IsVisible;
        if (record.IsInPaperSpace)
        {
            _log.LeftOut(record, DxfIssueCodes.PaperSpace, "lies in paper space", "lie in paper space");
        }
        else if (record.IsInvisible)
        {
            _log.LeftOut(record, DxfIssueCodes.LayerHidden, "is switched invisible", "are switched invisible");
        }
        else if (isHidden)
        {
            string state = layer.IsFrozen ? "frozen" : "off";
            _log.LeftOut(
                record,
                DxfIssueCodes.LayerHidden,
                $"lies on a layer that is {state}",
                $"lie on a layer that is {state}"
            );
        }
        else if (record.Type == "INSERT")
        {
            Explode(record, placement, ct);
        }
        else
        {
            TellWhenNewer(record);
            if (_curves.Of(record) is { } placed)
            {
                AddShape(record, placed.Curve, placed.Map.Then(placement.Map), isInBlock: placement.Depth > 0);
            }
        }
    }

    private void TellWhenNewer(in EntityRecord record)
    {
        if (EntityVersions.IsNewer(record.Type, _versionMark))
        {
            string than =
                $"newer than the version the file says it has, {Wording.Quoted(_versionMark)}: an older program or machine may refuse it";
            _log.Count(record, DxfIssueCodes.EntityNewer, $"is {than}", $"are {than}");
        }
    }

    private void Explode(in EntityRecord record, Placement placement, CancellationToken ct)
    {
        if (_inserts.Insert(record) is not { } insert || _blockChoice.Of(record, insert, placement) is not { } block)
        {
            return;
        }

        for (int row = 0; row < insert.Rows; row++)
        {
            for (int column = 0; column < insert.Columns && !_log.IsHopeless; column++)
            {
                if (_budget.TryTakeEntity(record, ct))
                {
                    PlaneMap map = insert.MapOf(block, column, row).Then(placement.Map);
                    ReadRun(block.First, block.End, new Placement(map, record, block.Name, placement), ct);
                }
            }
        }
    }

    private void AddShape(in EntityRecord record, PlaneCurve curve, PlaneMap map, bool isInBlock)
    {
        if (_shapeMaker.Make(record, curve, map) is not { } geometry)
        {
            return;
        }

        int edges = geometry switch
        {
            OpenChain chain => chain.Edges.Length,
            ClosedOutline closed => closed.Outline.Edges.Length,
            _ => 1,
        };
        if (!_budget.TryTakeVertices(edges, record))
        {
            return;
        }

        _shapes.Add(
            new DxfShape(record.Handle, record.Layer, record.Type, record.Line, geometry)
            {
                PlaceWord = record.PlaceWord,
                IsInBlock = isInBlock,
            }
        );
    }
}
