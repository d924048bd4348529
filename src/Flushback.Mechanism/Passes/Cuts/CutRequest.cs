using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Knives;

namespace Flushback.Mechanism.Passes.Cuts;

/// <summary>What a cut is made on.</summary>
/// <param name="Piece">The part.</param>
/// <param name="Knife">The knife it belongs to.</param>
/// <param name="Readings">How the knife reads.</param>
/// <param name="Cancellation">Ends the work early, by an exception.</param>
internal sealed record CutRequest(Workpiece Piece, Knife Knife, StopReadings Readings, CancellationToken Cancellation);
