using Flushback.Dxf.Writing;
using Flushback.Geometry;

namespace Flushback.Dxf.Tests;

/// <summary>A CAD program (Debian: librecad) opens what we write, and prints it.</summary>
public sealed class CadProgramTests
{
    /// <summary>Bytes of print that the marks take at least, beyond what an empty sheet takes.</summary>
    private const int MarksTake = 300;

    /// <summary>Something to see near the origin, where other people's parts are.</summary>
    private static readonly OverlayLayer[] Near =
    [
        new(
            "FB_NEAR",
            1,
            [
                OverlayPath.Of(Outline.FromVertices([new(0, 0), new(90, 0, 0.4), new(90, 20), new(10, 20, -0.5)])),
                new OverlayText("lift 0.12 mm \u00B1 2 \u00B5m", new(5, 6), 5),
            ]
        ),
    ];

    public static TheoryData<DxfVersion> Versions => [.. Enum.GetValues<DxfVersion>()];

    [Theory]
    [MemberData(nameof(Versions))]
    public void A_new_drawing_opens_and_prints(DxfVersion version)
    {
        int blank = Referee.PrintedBytes(DxfWriter.Write(version, DrawingUnit.Millimetre, []));
        int drawn = Referee.PrintedBytes(DxfWriter.Write(version, DrawingUnit.Millimetre, Near));
        Assert.True(drawn > blank + MarksTake, $"An empty sheet prints {blank} bytes, the marks {drawn}.");
    }

    [Theory]
    [InlineData("misc/t-part.dxf")]
    [InlineData("block/blk1.dxf")]
    public void Somebody_elses_drawing_opens_and_prints_with_our_layers_over_it(string file)
    {
        byte[] original = File.ReadAllBytes(ThirdPartyDrawingTests.Found(file));
        int before = Referee.PrintedBytes(original);
        int after = Referee.PrintedBytes(DxfOverlay.AddTo(original, DrawingUnit.Millimetre, Near));
        Assert.True(after > before + MarksTake, $"The drawing prints {before} bytes, with the marks {after}.");
    }
}
