using System.Globalization;
using System.Text;
using Flushback.Cli.Arguments;
using Flushback.Cli.Commands;
using Flushback.Contract.V1;
using Google.Protobuf;

namespace Flushback.Cli.Output;

/// <summary>Writes a file of passes that <c>simulate --passes</c> reads.</summary>
internal static class PassFileText
{
    /// <summary>Name of the file in a folder of a plan.</summary>
    public const string FileName = "passes.yaml";

    /// <summary>The file.</summary>
    /// <param name="report">The plan.</param>
    public static ByteString Of(PlanReport report)
    {
        StringBuilder yaml = new();
        yaml.Append("# The passes of a plan, in the order to make them, for: simulate FILE --passes passes.yaml\n");
        if (report.Offsets.Count > 0)
        {
            yaml.Append(
                "# It starts from what was measured: simulate, which starts from the drawing, reads otherwise.\n"
            );
        }

        yaml.Append(report.Steps.Count > 0 ? "passes:\n" : "passes: []\n");
        foreach (SimulationStep step in report.Steps)
        {
            Append(yaml, step.Pass);
        }

        return ByteString.CopyFromUtf8(yaml.ToString());
    }

    private static void Append(StringBuilder yaml, Pass pass)
    {
        (string said, (string Name, string Value)[] amounts) = pass.KindCase switch
        {
            Pass.KindOneofCase.FlatSlice => (
                $"slice: {FaceName.Of(pass.FlatSlice.Face)}",
                Depths(pass.FlatSlice.FrontDepthMm, pass.FlatSlice.RearDepthMm)
            ),
            Pass.KindOneofCase.WheelSlice => (
                $"wheel: {FaceName.Of(pass.WheelSlice.Face)}",
                [
                    .. Depths(pass.WheelSlice.FrontDepthMm, pass.WheelSlice.RearDepthMm),
                    ("radius", Mm(pass.WheelSlice.WheelRadiusMm)),
                ]
            ),
            Pass.KindOneofCase.RoundCorner => (
                $"round: {FaceName.Of(pass.RoundCorner.Corner)}",
                [("radius", Mm(pass.RoundCorner.RadiusMm))]
            ),
            Pass.KindOneofCase.ReliefArc => (
                $"relieve: {FaceName.Of(pass.ReliefArc.Face)}",
                [
                    ("depth", Mm(pass.ReliefArc.DepthMm)),
                    .. Depths(pass.ReliefArc.FrontMarginMm, pass.ReliefArc.RearMarginMm),
                ]
            ),
            Pass.KindOneofCase.DressKick => ("dress: kick", [("depth", Mm(pass.DressKick.DepthMm))]),
            Pass.KindOneofCase.LowerNose => (
                "lower: nose",
                Depths(pass.LowerNose.FrontDepthMm, pass.LowerNose.RearDepthMm)
            ),
            Pass.KindOneofCase.DressEndFace => (
                "dress: end-face",
                [("angle", Exact(pass.DressEndFace.AngleDeg)), ("depth", Mm(pass.DressEndFace.DepthMm))]
            ),
            Pass.KindOneofCase.ShortenTip => (
                "shorten: tip",
                [("by", Mm(pass.ShortenTip.LengthMm)), ("allowed", pass.ShortenTip.Allowed ? "yes" : "no")]
            ),
            _ => throw new BadInputException("The service plans a pass that this program does not know; renew it."),
        };
        yaml.Append("  - ").Append(said).Append('\n');
        foreach ((string name, string value) in amounts)
        {
            yaml.Append("    ").Append(name).Append(": ").Append(value).Append('\n');
        }
    }

    private static (string Name, string Value)[] Depths(double frontMm, double rearMm) =>
        [("front", Mm(frontMm)), ("rear", Mm(rearMm))];

    private static string Mm(double mm) => $"{Exact(mm)}mm";

    // With all its digits: it has to read as the plan does.
    private static string Exact(double value) => value.ToString("R", CultureInfo.InvariantCulture);
}
