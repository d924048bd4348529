using Flushback.Catalogue.Designs;
using Flushback.Geometry;
using Flushback.Mechanism.Handle;
using Xunit.Abstractions;

namespace Flushback.Handle.Tests;

public class Probe(ITestOutputHelper output)
{
    [Fact]
    public void Print()
    {
        foreach (
            KnifeDesign d in KnifeCatalogue.All.Append(
                new("Longer")
                {
                    Spring = new SpringDesign
                    {
                        CentrePin = new Point(-36, 5.1),
                        RearPin = new Point(-74, 5.3),
                        BellyMm = 0.7,
                    },
                    Tang = new TangDesign { OpenCornerRadiusMm = 0.3, ClosedCornerRadiusMm = 0.3 },
                    Blade = new BladeDesign { LengthMm = 78 },
                }
            )
        )
        {
            var bench = Placed.OnTheBench(d);
            var sw = System.Diagnostics.Stopwatch.StartNew();
            var (r, problems) = HandleCheck.Run(bench, new HandleSettings { PreloadMm = 0.4 });
            output.WriteLine(
                $"== {d.Name} {sw.Elapsed.TotalMilliseconds:F0} ms {string.Join(" ", problems.Select(p => p.Sentence))}"
            );
            if (r is null)
            {
                continue;
            }
            output.WriteLine(
                $"{r.Spring} {r.Pull} {r.Strength} maxdiff {r.Curve.Max(c => Math.Abs(c.LiftMm - c.BenchLiftMm)):F4} lift {r.Curve.Max(c => c.BenchLiftMm):F3}"
            );
            foreach (var s in r.Stops)
            {
                output.WriteLine(
                    $"{s.Stop} {s.RestAngle.Degrees:F3} {s.LiftMm:F4} {s.BenchLiftMm:F4} {s.PeakStressMpa:F0} snap {s.SnapNmm:F0} over {s.TakesOver.Degrees:F2} | {string.Join(";", s.Contacts.Select(c => $"{c.ForceN:F1} {c.BladeFace} {c.SpringFace} {c.PressureMpa:F0}/{c.YieldPressureMpa:F0}"))}"
                );
            }
            foreach (var s in r.Sensitivities)
            {
                output.WriteLine(s.ToString());
            }
            foreach (var f in r.Findings)
            {
                output.WriteLine(f.Code + " " + f.Message);
            }
            sw.Restart();
            output.WriteLine(
                PreloadSuggestion.For(bench.Placement, new HandleSettings(), 20, 1080).Suggestion
                    + $" {sw.Elapsed.TotalMilliseconds:F0} ms"
            );
        }
    }
}
