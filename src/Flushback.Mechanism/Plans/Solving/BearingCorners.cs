using System.Collections.Immutable;
using Flushback.Geometry;
using Flushback.Geometry.Distances;
using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Knives;
using Flushback.Mechanism.Passes;

namespace Flushback.Mechanism.Plans.Solving;

/// <summary>The corners of the spring that bear on some knives only and are rounded there: nose corner and rear corner of the pad.</summary>
/// <remarks>
/// Open corner, closed corner and kick slide along the spring on every knife; at the peaks between the stops it is they that
/// carry, on the pad between its ends. These two touch at a stop or nowhere; where a face touches along a length, its ends
/// do not count. What the cuts have changed about that is seen at the end; a round that takes the contact away, which without
/// it comes back, is made. The shoulder's top stays as it is: nothing slides over it, and a round there lets the blade open
/// too far, which moves the zero most of all.
/// </remarks>
internal sealed class BearingCorners(PlanSettings settings)
{
    // Places of contacts are exact but for rounding.
    private const double OnCornerMm = 1e-5;

    private static readonly ImmutableArray<Site> _all = [Site.On(SpringFace.NoseCorner), Site.On(SpringFace.Underside)];

    private readonly HashSet<Site> _leftSharp = [];

    /// <summary>The corners to round.</summary>
    public ImmutableArray<Site> Rounded { get; private set; } = [];

    /// <summary>Looks at a trial; true when other corners bear than were rounded in it.</summary>
    public bool Look(Knife knife, StopReadings readings)
    {
        if (settings.LeastCornerRadiusMm <= 0)
        {
            return false;
        }

        ImmutableArray<Site> rounded = [.. _all.Where(corner => IsToRound(knife, readings, corner))];
        bool isOther = !rounded.SequenceEqual(Rounded);
        _leftSharp.UnionWith(Rounded.Except(rounded));
        Rounded = rounded;
        return isOther;
    }

    private bool IsToRound(Knife knife, StopReadings readings, Site corner) =>
        Bears(knife, readings, corner) || (Rounded.Contains(corner) && _leftSharp.Contains(corner));

    private static bool Bears(Knife knife, StopReadings readings, Site corner)
    {
        Workpiece piece = Workpiece.Of(knife, corner.Part);
        if (CornerSpot.Of(piece, corner) is not { } spot)
        {
            return false;
        }

        Point start = piece.EdgeAt(spot.Before).End;
        Edge[] edges =
            spot.Count == 0
                ? [new Edge(start, start)]
                : [.. Enumerable.Range(spot.Before + 1, spot.Count).Select(piece.EdgeAt)];
        return readings
            .Stops.SelectMany(reading =>
                reading
                    .Contacts.Where(contact => contact.LengthMm == 0)
                    .SelectMany(contact => FaceContacts.PlacesOf(knife, reading, contact, corner.Part))
            )
            .Any(place => Distance.Between(place.At, edges).DistanceMm < OnCornerMm);
    }
}
