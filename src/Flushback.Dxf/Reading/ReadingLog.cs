using System.Collections.Immutable;
using Flushback.Dxf.Tags;
using Flushback.Geometry;

namespace Flushback.Dxf.Reading;

/// <summary>Gathers what there is to say while a drawing is read.</summary>
internal sealed class ReadingLog
{
    /// <summary>After so many errors the file is given up: more of them tell a maker nothing new.</summary>
    private const int MostErrors = 20;

    private readonly List<DxfIssue> _issues = [];
    private readonly List<DxfIssue> _faults = [];
    private readonly Dictionary<(string Code, string Type, string Layer), CountedGroup> _counted = [];
    private int _errors;

    /// <summary>True once the drawing cannot be used.</summary>
    public bool HasErrors => _errors > 0;

    /// <summary>True once reading on is of no use.</summary>
    public bool IsHopeless => _errors >= MostErrors;

    /// <summary>Faults of single entities, which count only where their layer is used.</summary>
    public ImmutableArray<DxfIssue> Faults => [.. _faults];

    /// <summary>Errors and repairs as they were met, then what was left out or fitted, counted by type and layer.</summary>
    public ImmutableArray<DxfIssue> Issues =>
        [
            .. _issues,
            .. _counted.Select(pair => new DxfIssue(
                pair.Key.Code,
                DxfIssueKind.Notice,
                pair.Value.Sentence,
                pair.Value.First.Handle is { Length: > 0 } handle ? handle : null,
                pair.Key.Layer,
                pair.Value.First.Line
            )
            {
                Count = pair.Value.Count,
            }),
        ];

    /// <summary>Adds an issue about the file as a whole.</summary>
    public void Add(DxfIssue issue)
    {
        _issues.Add(issue);
        _errors += issue.IsFatal ? 1 : 0;
    }

    /// <summary>Adds an error about the file, with the line it was met at.</summary>
    public void Error(string code, string sentence, int? line = null) =>
        Add(new DxfIssue(code, DxfIssueKind.Error, sentence, Line: line));

    /// <summary>Stops the reading: the drawing is larger than allowed.</summary>
    public void LimitExceeded(DxfLimitHit limit, string sentence, int? line = null)
    {
        Add(new DxfIssue(DxfIssueCodes.TooLarge, DxfIssueKind.LimitExceeded, sentence, Line: line) { Limit = limit });
        _errors += MostErrors;
    }

    /// <summary>A group whose value is no finite number.</summary>
    public void DamagedNumber(TagFile file, in DxfTag tag, in EntityRecord record)
    {
        string value = file.IsBinary ? "an infinite value or none" : Wording.Quoted(file.Text(tag));
        string hint = value.Contains(',', StringComparison.Ordinal)
            ? "decimals need a point, not a comma: set the program or the computer to decimal points and export again"
            : "export the drawing again";
        Add(
            new DxfIssue(
                DxfIssueCodes.Number,
                DxfIssueKind.Error,
                $"{record.Label}: group {Wording.Whole(tag.Code)} at {file.Place(tag.ValueLine(file.IsBinary))} "
                    + $"should be a number and is {value}; {hint}.",
                record.Handle,
                record.Layer,
                tag.ValueLine(file.IsBinary)
            )
        );
    }

    /// <summary>Something put right in one entity.</summary>
    public void Repair(string code, string sentence, in EntityRecord record, Point atMm) =>
        Add(
            new DxfIssue(code, DxfIssueKind.Repair, sentence, record.Handle, record.Layer, record.Line, atMm)
            {
                EntityType = record.IsInBlock ? null : record.Type,
            }
        );

    /// <summary>One entity whose geometry cannot be used: an error where its layer is used, a notice elsewhere.</summary>
    /// <param name="record">The entity.</param>
    /// <param name="code">Issue code.</param>
    /// <param name="what">What is wrong and what to do, to follow the entity's name.</param>
    /// <param name="atMm">Where.</param>
    public void Fault(in EntityRecord record, string code, string what, Point? atMm = null)
    {
        _faults.Add(
            new DxfIssue(
                code,
                DxfIssueKind.Error,
                $"{record.Label} {what}.",
                record.Handle,
                record.Layer,
                record.Line,
                atMm
            )
        );
        LeftOut(record, code, "has no usable geometry", "have no usable geometry");
    }

    /// <summary>One entity that is passed over.</summary>
    public void LeftOut(in EntityRecord record, string code, string becauseOne, string becauseMany) =>
        Count(record, code, $"{becauseOne} and was left out", $"{becauseMany} and were left out");

    /// <summary>One entity of which something is told as a notice; such entities are counted and told once by type and layer.</summary>
    /// <param name="record">The entity.</param>
    /// <param name="code">Issue code.</param>
    /// <param name="one">What to say of one, to follow its name.</param>
    /// <param name="many">What to say of several, to follow their number and type.</param>
    public void Count(in EntityRecord record, string code, string one, string many)
    {
        var key = (code, record.Type, record.Layer);
        if (_counted.TryGetValue(key, out CountedGroup? group))
        {
            group.Count++;
        }
        else
        {
            _counted.Add(key, new CountedGroup(record, one, many));
        }
    }

    private sealed class CountedGroup(EntityRecord first, string one, string many)
    {
        public EntityRecord First { get; } = first;

        public int Count { get; set; } = 1;

        public string Sentence =>
            Count == 1
                ? $"{First.Label} {one}."
                : $"{Wording.Whole(Count)} {First.Type} entities on layer {First.Layer} {many}; "
                    + $"the first is {(First.Handle.Length > 0 ? First.Handle + " " : "")}at {First.Place}.";
    }
}
