using System.Collections.Immutable;
using System.Diagnostics;
using System.Runtime.CompilerServices;
using System.Text.Json;
using Flushback.Geometry.Approximation;

namespace Flushback.Geometry.Tests.Offsets;

/// <summary>
/// An independent library for offsets (npm: clipper2-ts, in the version locked there) in a process of its own. It knows
/// polygons only. When it is missing, the test fails.
/// </summary>
internal static class PolygonReferee
{
    /// <summary>Greatest distance of the chords given to it from the arcs they stand for.</summary>
    public const double SagittaMm = 2e-4;

    /// <summary>How far its own round joins may lie inside the circle they stand for.</summary>
    public const double ArcToleranceMm = 2e-4;

    /// <summary>It works on a grid of a millionth of a millimetre, to which it rounds what it is given and what it gives.</summary>
    public const double GridMm = 2e-6;

    private const int Decimals = 6;

    private static readonly Lock Installing = new();

    /// <summary>For each job, the polygons that are left after all its offsets.</summary>
    public static ImmutableArray<ImmutableArray<Outline>> Run(IEnumerable<(Region Region, double[] StepsMm)> jobs)
    {
        string answer = Output(JsonSerializer.Serialize(jobs.Select(job => JobOf(job.Region, job.StepsMm))));
        double[][][][] polygons = JsonSerializer.Deserialize<double[][][][]>(answer)!;
        return
        [
            .. polygons.Select(rings =>
                rings
                    .Where(ring => ring.Length > 2)
                    .Select(ring => Outline.FromVertices([.. ring.Select(p => new Vertex(p[0], p[1]))]))
                    .ToImmutableArray()
            ),
        ];
    }

    private static object JobOf(Region region, double[] steps) =>
        new
        {
            paths = region.Outlines.Select(outline =>
                Flattening.PointsOf(outline, SagittaMm).Select(p => new[] { p.X, p.Y })
            ),
            steps,
            arcToleranceMm = ArcToleranceMm,
            decimals = Decimals,
        };

    private static string Output(string jobs)
    {
        string folder = Folder();
        lock (Installing)
        {
            if (!Directory.Exists(Path.Combine(folder, "node_modules")))
            {
                Output("npm", "", "ci", "--ignore-scripts", "--no-audit", "--prefix", folder);
            }
        }

        return Output("node", jobs, Path.Combine(folder, "offset.mjs"));
    }

    private static string Output(string program, string input, params string[] arguments)
    {
        ProcessStartInfo start = new(program, arguments)
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        using Process process =
            Process.Start(start) ?? throw new InvalidOperationException($"The referee {program} did not start.");
        Task<string> output = process.StandardOutput.ReadToEndAsync();
        Task<string> errors = process.StandardError.ReadToEndAsync();
        process.StandardInput.Write(input);
        process.StandardInput.Close();
        process.WaitForExit();
        Assert.True(process.ExitCode == 0, $"The referee {program} failed: {errors.Result}");
        return output.Result;
    }

    private static string Folder([CallerFilePath] string thisFile = "") =>
        Path.Combine(Path.GetDirectoryName(thisFile)!, "..", "..", "interop", "polygon-offsets");
}
