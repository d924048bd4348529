using System.Collections.Immutable;
using Flushback.Geometry;
using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Knives;

namespace Flushback.Mechanism.Passes;

/// <summary>What a pass leaves and takes.</summary>
/// <param name="Knife">The knife after the pass; every face keeps its name.</param>
/// <param name="Removed">What was taken off.</param>
public sealed record PassResult(Knife Knife, RemovedMetal Removed);

/// <summary>Metal taken off by one pass.</summary>
/// <param name="Part">The part it came from.</param>
/// <param name="AreaMm2">Area of the outline lost.</param>
/// <param name="Regions">What came off, closed, in the frame of the part (blade open, spring as drawn).</param>
/// <param name="Depths">Depth at each contact there was before the pass on this part, in the order of the readings.</param>
public sealed record RemovedMetal(
    Part Part,
    double AreaMm2,
    ImmutableArray<Outline> Regions,
    ImmutableArray<ContactDepth> Depths
);

/// <summary>How much a pass took off at a contact.</summary>
/// <param name="Stop">The stop at which the two touched.</param>
/// <param name="Contact">The contact before the pass.</param>
/// <param name="DepthMm">Distance of the contact's place from the metal that is left; 0 where nothing was taken.</param>
public readonly record struct ContactDepth(Stop Stop, Contact Contact, double DepthMm);
