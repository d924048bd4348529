using Flushback.Dxf.Writing;

namespace Flushback.Dxf.Tests;

public sealed class FreeLayerNamesTests
{
    [Fact]
    public void Names_that_a_drawing_does_not_have_are_free_as_they_are() =>
        Assert.Equal("", FreeLayerNames.SuffixFor(With("FB_OTHER"), ["FB_A", "FB_B"]));

    [Fact]
    public void One_name_taken_in_any_case_moves_them_all_on() =>
        Assert.Equal("_2", FreeLayerNames.SuffixFor(With("fb_b"), ["FB_A", "FB_B"]));

    [Fact]
    public void The_first_number_that_is_free_for_all_is_taken() =>
        Assert.Equal("_4", FreeLayerNames.SuffixFor(With("FB_A", "FB_B_2", "FB_A_3"), ["FB_A", "FB_B"]));

    private static byte[] With(params string[] layers) =>
        DxfWriter.Write(
            DxfVersion.R2000,
            DrawingUnit.Millimetre,
            [.. layers.Select(name => new OverlayLayer(name, 1, []))]
        );
}
