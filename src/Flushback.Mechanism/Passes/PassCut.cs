using System.Collections.Immutable;
using Flushback.Geometry;
using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Knives;
using Flushback.Mechanism.Passes.Cuts;

namespace Flushback.Mechanism.Passes;

/// <summary>Makes one pass on a knife, exactly on its lines and arcs, or says why it cannot be made.</summary>
public static class PassCut
{
    private const double TouchMm = 1e-9;

    /// <summary>Makes a pass.</summary>
    /// <param name="knife">The knife as it is.</param>
    /// <param name="readings">How it reads: the contacts say where depths count.</param>
    /// <param name="pass">The pass.</param>
    /// <param name="settings">What has to be left.</param>
    /// <param name="cancellation">Ends the work early, by an exception.</param>
    /// <returns>The knife after the pass, or why it cannot be made; exactly one of the two.</returns>
    /// <exception cref="OperationCanceledException">When cancelled.</exception>
    public static (PassResult? Result, PassProblem? Problem) Make(
        Knife knife,
        StopReadings readings,
        Pass pass,
        PassSettings settings,
        CancellationToken cancellation = default
    )
    {
        ArgumentNullException.ThrowIfNull(knife);
        ArgumentNullException.ThrowIfNull(readings);
        ArgumentNullException.ThrowIfNull(pass);
        ArgumentNullException.ThrowIfNull(settings);
        Part part = pass.Site.Part;
        Workpiece before = Workpiece.Of(knife, part);
        CutRequest request = new(before, knife, readings, cancellation);
        (Workpiece? after, PassProblem? problem) = Amounts.Refuse(pass) is { } refused
            ? (null, refused)
            : Cut(request, pass);
        if (after is null)
        {
            return (null, problem);
        }

        if (Remains.Check(before, after, knife, pass, settings, cancellation) is { } gone)
        {
            return (null, gone);
        }

        RemovedMetal removed = new(
            part,
            before.Outline.AreaMm2 - after.Outline.AreaMm2,
            after.Removed,
            DepthsAt(knife, readings, part, after.Outline)
        );
        return (new PassResult(after.PutInto(knife, part), removed), null);
    }

    private static (Workpiece? After, PassProblem? Problem) Cut(CutRequest request, Pass pass) =>
        pass switch
        {
            SlicePass slice => SliceCut.Make(request, slice),
            RoundCorner round => RoundCut.Make(request, round),
            ReliefArc relief => ReliefCut.Make(request, relief),
            DressKick dress => KickCut.Make(request, dress),
            DressEndFace dress => EndFaceCut.Make(request, dress),
            ShortenTip tip => TipCut.Make(request, tip),
            _ => throw new ArgumentOutOfRangeException(nameof(pass), pass, "No such pass."),
        };

    /// <summary>How far each contact's place now lies outside the metal.</summary>
    private static ImmutableArray<ContactDepth> DepthsAt(
        Knife knife,
        StopReadings readings,
        Part part,
        Outline outline
    ) =>
        [
            .. readings.Stops.SelectMany(reading =>
                reading.Contacts.Select(contact => new ContactDepth(
                    reading.Stop,
                    contact,
                    FaceContacts.PlacesOf(knife, reading, contact, part).Max(place => DepthMm(place.At, outline))
                ))
            ),
        ];

    private static double DepthMm(Point place, Outline outline)
    {
        double depth = -outline.SignedDistanceMm(place);
        return depth > TouchMm ? depth : 0;
    }
}
