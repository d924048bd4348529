using System.Collections.Immutable;
using Flushback.Dxf;
using Flushback.Inspection.Checks;
using Flushback.Inspection.Contours;

namespace Flushback.Inspection.Repair;

/// <summary>What was put right while reading and joining, by the entities it is about.</summary>
internal sealed class MendedIssues
{
    private readonly ShapeLookup _shapes;
    private readonly ILookup<string, DxfIssue> _byName;

    public MendedIssues(IEnumerable<DxfIssue> issues, ShapeLookup shapes)
    {
        _shapes = shapes;
        _byName = issues
            .Where(issue => issue.Code != DxfIssueCodes.Duplicate)
            .SelectMany(issue => NamesIn(issue).Select(name => (name, issue)))
            .ToLookup(pair => pair.name, pair => pair.issue, StringComparer.Ordinal);
    }

    /// <summary>Names of the entities an issue is about, as contours know them.</summary>
    public ImmutableArray<string> NamesIn(DxfIssue issue) =>
        issue.Entities.IsEmpty && _shapes.At(issue.Line) is { } shape
            ? [EntityOrder.NameOf(shape)]
            : IssueEntities.Of(issue);

    /// <summary>The issues about an entity.</summary>
    public IEnumerable<DxfIssue> About(string name) => _byName[name];

    /// <summary>The overlaps by which others went into some entities, and others again into those.</summary>
    public ImmutableArray<DxfIssue> OverlapsInto(IEnumerable<string> names)
    {
        HashSet<DxfIssue> found = [];
        Queue<string> open = new(names);
        while (open.TryDequeue(out string? name))
        {
            foreach (DxfIssue issue in _byName[name])
            {
                if (issue.Code == DxfIssueCodes.Overlap && issue.Entities[0] == name && found.Add(issue))
                {
                    open.Enqueue(issue.Entities[1]);
                }
            }
        }

        return [.. found];
    }
}
