using System.Globalization;
using System.Text;
using Flushback.Dxf.Reading;
using Flushback.Geometry;
using Flushback.Inspection;
using Flushback.Patterns.Parameters;

namespace Flushback.Patterns.Tests;

/// <summary>The outlines as the shop that is to cut them sees them: a sheet with the three pieces, a layer each.</summary>
public sealed class ShopTests
{
    private const double ApartMm = 60;

    [Fact]
    public void The_inspection_finds_nothing_on_the_pieces_of_500_random_patterns()
    {
        foreach ((int seed, DrawnPattern pattern) in RandomPatterns.FiveHundred)
        {
            PinParameters pins = pattern.Dimensions.Pins;
            InspectionSettings settings = new()
            {
                LeastWebMm = 0.99 * pins.WallMm,
                PinDiametersMm = [pins.PivotDiameterMm, pins.CentreDiameterMm, pins.RearDiameterMm],
            };
            InspectionReport report = ProfileInspection.Run(
                DxfReader.Read(Encoding.UTF8.GetBytes(Sheet(pattern)), new DxfReadOptions()),
                settings
            );
            Assert.True(
                report.Findings.IsEmpty,
                $"seed {seed}: {string.Join(" ", report.Findings.Select(finding => $"{finding.Code} {finding.Message}"))}"
            );
        }
    }

    private static string Sheet(DrawnPattern pattern)
    {
        StringBuilder file = new("0\nSECTION\n2\nHEADER\n9\n$INSUNITS\n70\n4\n0\nENDSEC\n0\nSECTION\n2\nENTITIES\n");
        int row = 0;
        foreach (PatternPiece piece in pattern.Pieces)
        {
            RigidMotion apart = new(Angle.Zero, new Vector(0, ApartMm * row++));
            string layer = piece.Kind.ToString().ToUpperInvariant();
            Outline outline = piece.Rough.Transformed(apart);
            Append(file, $"0\nLWPOLYLINE\n8\n{layer}\n90\n{outline.Edges.Length}\n70\n1\n");
            foreach (Vertex vertex in outline.Vertices)
            {
                Append(file, $"10\n{vertex.Position.X:R}\n20\n{vertex.Position.Y:R}\n42\n{vertex.Bulge:R}\n");
            }

            foreach (Circle hole in piece.Holes.Select(hole => apart.Apply(hole.Circle)))
            {
                Append(
                    file,
                    $"0\nCIRCLE\n8\n{layer}\n10\n{hole.Centre.X:R}\n20\n{hole.Centre.Y:R}\n40\n{hole.RadiusMm:R}\n"
                );
            }
        }

        return file.Append("0\nENDSEC\n0\nEOF\n").ToString();
    }

    private static void Append(StringBuilder file, FormattableString text) =>
        file.Append(text.ToString(CultureInfo.InvariantCulture));
}
