using System.Collections.Immutable;

namespace Flushback.Dxf.Writing;

/// <summary>A layer of our own and what to draw on it.</summary>
/// <param name="Name">
/// Layer name: letters, digits, <c>$ - _</c>, at most 31 characters, so that every version accepts it. A layer of that
/// name that is already in the drawing is used as it is.
/// </param>
/// <param name="ColourIndex">Colour index of the format, 1 (red) to 255.</param>
/// <param name="Entities">What to draw.</param>
public sealed record OverlayLayer(string Name, int ColourIndex, ImmutableArray<OverlayEntity> Entities);
