using Flushback.Dxf.Chaining;
using Flushback.Dxf.Drawings;
using Flushback.Dxf.Reading;
using Flushback.Geometry;
using Flushback.Mechanism.Knives;
using Xunit;

namespace Flushback.Catalogue.Tests;

/// <summary>Takes a sample's parts off their layers and brings the knife into its own frame.</summary>
internal static class SampleKnife
{
    public static Placement Read(string file)
    {
        byte[] bytes = File.ReadAllBytes(Path.Combine(SampleFilesTests.Folder, file));
        DxfReadOptions options = DxfReadOptions.Default;
        DxfDrawing drawing = DxfReader.Read(bytes, options).Drawing!;
        Circle[] pins =
        [
            .. DxfContours.ContoursOf(drawing, "PINS", options.JoinToleranceMm).Circles.Select(shape => shape.Circle),
        ];
        (Placement? placement, _) = KnifePlacement.Place(
            new DrawnKnife
            {
                Blade = Part("BLADE"),
                Spring = Part("SPRING"),
                Handle = Part("HANDLE"),
                Pivot = pins[0],
                CentrePin = pins[1],
                RearPin = pins[2],
            }
        );
        return placement!;

        Outline Part(string layer) =>
            Assert.Single(DxfContours.ContoursOf(drawing, layer, options.JoinToleranceMm).Contours).Outline;
    }
}
