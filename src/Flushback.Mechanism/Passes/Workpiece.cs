using System.Collections.Immutable;
using Flushback.Geometry;
using Flushback.Geometry.Removal;
using Flushback.Mechanism.Knives;

namespace Flushback.Mechanism.Passes;

/// <summary>The part a pass works on, in its own frame: the blade open, the spring as drawn; with its named edges.</summary>
/// <remarks>Names are carried from edge to edge through every cut; they are found from the shape once, when the knife is placed.</remarks>
internal sealed class Workpiece
{
    private readonly Outline _untouched;
    private readonly ImmutableArray<int> _sources;

    private Workpiece(Outline outline, ImmutableArray<Site> sites)
    {
        (Outline, Sites, _untouched) = (outline, sites, outline);
        _sources = [.. Enumerable.Range(0, sites.Length)];
    }

    private Workpiece(Workpiece before, CutOutline cut, Site made)
    {
        Outline = cut.Outline;
        Sites = [.. cut.Sources.Select(source => source == CutOutline.New ? made : before.Sites[source])];
        _untouched = before._untouched;
        _sources = [.. cut.Sources.Select(source => source == CutOutline.New ? source : before._sources[source])];
    }

    /// <summary>The outline, counter-clockwise.</summary>
    public Outline Outline { get; }

    /// <summary>The face of each edge.</summary>
    public ImmutableArray<Site> Sites { get; }

    /// <summary>What has been taken off since it was picked up, in closed outlines.</summary>
    public ImmutableArray<Outline> Removed => RemovedRegions.Between(_untouched, Outline, _sources);

    /// <summary>Number of edges.</summary>
    public int Count => Sites.Length;

    /// <summary>A part of a knife.</summary>
    public static Workpiece Of(Knife knife, Part part) =>
        part == Part.Spring
            ? new Workpiece(knife.Spring, [.. knife.SpringFaces.Select(Site.On)])
            : new Workpiece(knife.Blade, [.. knife.BladeFaces.Select(Site.On)]);

    /// <summary>What is left after a cut; edges made by the tool get a name.</summary>
    public Workpiece After(CutOutline cut, Site made) => new(this, cut, made);

    /// <summary>The knife with this part in place of its own.</summary>
    public Knife PutInto(Knife knife, Part part) =>
        part == Part.Spring
            ? knife with
            {
                Spring = Outline,
                SpringFaces = [.. Sites.Select(site => site.Spring ?? SpringFace.Unknown)],
            }
            : knife with
            {
                Blade = Outline,
                BladeFaces = [.. Sites.Select(site => site.Blade ?? BladeFace.Unknown)],
            };

    /// <summary>An edge by its index, counted round the outline either way.</summary>
    public Edge EdgeAt(int index) => Outline.Edges[Around(index)];

    /// <summary>The face of an edge by its index, counted round the outline either way.</summary>
    public Site SiteAt(int index) => Sites[Around(index)];

    /// <summary>An index brought into the range of edges.</summary>
    public int Around(int index) => ((index % Count) + Count) % Count;

    /// <summary>Length of all edges that bear a name, in millimetres.</summary>
    public double LengthOf(Site site)
    {
        double length = 0;
        for (int i = 0; i < Count; i++)
        {
            length += Sites[i] == site ? Outline.Edges[i].LengthMm : 0;
        }

        return length;
    }

    /// <summary>The longest run of edges that bear a name, one after another; null when none does.</summary>
    public FaceRun? RunOf(Site site)
    {
        FaceRun? best = null;
        double longest = 0;
        bool isAround = Sites.All(other => other == site);
        for (int i = 0; i < Count; i++)
        {
            if (Sites[i] != site || (Sites[Around(i - 1)] == site && !isAround))
            {
                continue;
            }

            int count = 0;
            double length = 0;
            for (; count < Count && SiteAt(i + count) == site; count++)
            {
                length += EdgeAt(i + count).LengthMm;
            }

            if (length > longest)
            {
                (best, longest) = (new FaceRun(i, count), length);
            }
        }

        return best;
    }
}

/// <summary>Edges of one name that follow one another.</summary>
/// <param name="First">Index of the first.</param>
/// <param name="Count">How many.</param>
internal readonly record struct FaceRun(int First, int Count)
{
    /// <summary>Index of the last, which may be beyond the number of edges where the run passes the first one.</summary>
    public int Last => First + Count - 1;
}
