using System.Collections.Immutable;
using Flushback.Dxf;
using Flushback.Mechanism.Knives;

namespace Flushback.Service.Drawings;

/// <summary>A knife as it came in, and where it came from.</summary>
/// <param name="Drawn">The knife in millimetres, in the frame it was drawn in.</param>
/// <param name="Unit">The unit it was read in.</param>
/// <param name="Repairs">What was mended or left aside while reading, each in one sentence.</param>
/// <param name="File">The drawing it was read from; null when it came as outlines.</param>
internal sealed record KnifeSource(
    DrawnKnife Drawn,
    Wire.LengthUnit Unit,
    ImmutableArray<string> Repairs,
    DrawingFile? File
);

/// <summary>A DXF file as the caller sent it.</summary>
/// <param name="Bytes">The file's bytes.</param>
/// <param name="Unit">The unit its coordinates were read in.</param>
internal sealed record DrawingFile(ReadOnlyMemory<byte> Bytes, DrawingUnit Unit);
