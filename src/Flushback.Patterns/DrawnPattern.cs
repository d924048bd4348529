using System.Collections.Immutable;
using Flushback.Geometry;
using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Knives;
using Flushback.Patterns.Parameters;

namespace Flushback.Patterns;

/// <summary>A pattern drawn: everything in the knife frame, blade open, spring where it lies on the open flat; millimetres.</summary>
public sealed record DrawnPattern
{
    /// <summary>The parameters as given.</summary>
    public required PatternParameters Parameters { get; init; }

    /// <summary>The parameters with every number that was left out filled in.</summary>
    public required PatternParameters Dimensions { get; init; }

    /// <summary>Blade, spring and handle for the check, every edge named.</summary>
    public required Knife Knife { get; init; }

    /// <summary>The blade with its tang: outline, pivot hole, nail nick.</summary>
    public required PatternPiece Blade { get; init; }

    /// <summary>The spring, unbent: outline and the holes for centre pin and rear pin.</summary>
    public required PatternPiece Spring { get; init; }

    /// <summary>Liner or scale: outline, holes for the pins, the well; of the first blade's side where the sides differ.</summary>
    public required PatternPiece Handle { get; init; }

    /// <summary>The line the spring's back is ground to, from the front to the butt.</summary>
    public required ImmutableArray<Edge> HandleLine { get; init; }

    /// <summary>
    /// Turns the spring from where it is drawn to where it lies on its pins without the blade: the nose sinks over the
    /// pivot by the preload, and the hole for the rear pin comes over that of the handle.
    /// </summary>
    public required RigidMotion SpringToFree { get; init; }

    /// <summary>What the dial is to read, each within a thousandth of an inch: the targets a check of this pattern is held to.</summary>
    public StopTargets Targets => TargetsOf(Dimensions);

    /// <summary>The targets for a page of dimensions.</summary>
    public static StopTargets TargetsOf(PatternParameters dimensions) =>
        new(
            new StopTarget(0, StopTargets.MmPerThou),
            new StopTarget(dimensions.Readings.HalfStopMm, StopTargets.MmPerThou),
            new StopTarget(dimensions.Readings.ClosedMm, StopTargets.MmPerThou)
        );

    /// <summary>The knife as a maker would hand it in: open, nothing named.</summary>
    public DrawnKnife ToDrawn() =>
        new()
        {
            Blade = Knife.Blade,
            Spring = Knife.Spring,
            Pivot = Blade.Holes[0].Circle,
            CentrePin = Knife.CentrePin,
            RearPin = Knife.RearPin,
            Handle = Knife.Handle,
            DrawnBladeAngle = Angle.Zero,
            HasHalfStop = Knife.HasHalfStop,
        };

    /// <summary>Blade, spring, handle, and what a second blade adds.</summary>
    public ImmutableArray<PatternPiece> Pieces => [Blade, Spring, Handle, .. SecondPieces];

    /// <summary>The pieces of a second blade in the same handle, seen in the frame of the first; none for one blade.</summary>
    public ImmutableArray<PatternPiece> SecondPieces { get; init; } = [];
}

/// <summary>One piece of a pattern.</summary>
/// <param name="Kind">Which.</param>
/// <param name="Finished">Its finished outline, counter-clockwise.</param>
/// <param name="Rough">The outline to cut when stock is left for grinding; the finished one otherwise.</param>
/// <param name="Holes">Holes for pins.</param>
/// <param name="Marks">Further outlines on the piece, which are not its border.</param>
public sealed record PatternPiece(
    PieceKind Kind,
    Outline Finished,
    Outline Rough,
    ImmutableArray<PatternHole> Holes,
    ImmutableArray<PatternMark> Marks
)
{
    /// <summary>True for a piece of the second blade.</summary>
    public bool IsSecond { get; init; }

    /// <summary>How many are cut for one knife.</summary>
    public int Count { get; init; } = 1;

    /// <summary>How thick it is, in millimetres; null where the page does not say.</summary>
    public double? ThicknessMm { get; init; }

    /// <summary>True when the rough outline is another than the finished one.</summary>
    public bool HasStock => !ReferenceEquals(Finished, Rough);
}

/// <summary>The pieces of a pattern.</summary>
public enum PieceKind
{
    /// <summary>Blade with tang.</summary>
    Blade,

    /// <summary>Backspring.</summary>
    Spring,

    /// <summary>Liner or scale, on either side of the knife.</summary>
    Handle,

    /// <summary>The liner between two springs side by side.</summary>
    LinerBetween,
}

/// <summary>A hole for a pin.</summary>
/// <param name="Pin">Which pin.</param>
/// <param name="Circle">Place and size; the nominal size of the pin.</param>
/// <param name="IsSecond">True for a pin of the second blade.</param>
public readonly record struct PatternHole(PinKind Pin, Circle Circle, bool IsSecond = false);

/// <summary>The pins of a knife.</summary>
public enum PinKind
{
    /// <summary>The blade turns on it.</summary>
    Pivot,

    /// <summary>The spring rocks on it.</summary>
    Centre,

    /// <summary>It holds the spring's rear end.</summary>
    Rear,
}

/// <summary>An outline on a piece.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Outline">Its outline, counter-clockwise.</param>
public readonly record struct PatternMark(MarkKind Kind, Outline Outline);

/// <summary>What an outline on a piece is.</summary>
public enum MarkKind
{
    /// <summary>The nail nick, ground or milled into the blade's side.</summary>
    NailNick,

    /// <summary>
    /// The room the closed blade takes below the spring: left free between liners, milled where handle and liner are one. It
    /// runs out of the handle below and in front.
    /// </summary>
    Well,
}
