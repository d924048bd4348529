using System.Diagnostics;
using System.Globalization;
using System.Text;
using BenchmarkDotNet.Attributes;
using BenchmarkDotNet.Engines;
using Flushback.Dxf.Chaining;
using Flushback.Dxf.Drawings;
using Flushback.Dxf.Reading;

namespace Flushback.Benchmarks;

/// <summary>What a large drawing costs to read and to chain, and what it costs an independent reader in the same run.</summary>
/// <remarks>Slots of two lines and two arcs, as a CAD program writes them: about 160 bytes an entity.</remarks>
[BenchTable]
[SimpleJob(RunStrategy.Throughput, warmupCount: 2, iterationCount: 5)]
public class ReadDrawing
{
    private static readonly DxfReadOptions Options = new()
    {
        Limits = new DxfLimits
        {
            MaxBytes = int.MaxValue,
            MaxEntities = int.MaxValue,
            MaxVertices = int.MaxValue,
            MaxCoordinateMm = 1e7,
        },
    };

    private byte[] _file = null!;
    private string _path = null!;
    private DxfDrawing _drawing = null!;

    /// <summary>Entities of the drawing.</summary>
    [Params(25_000, 100_000, 400_000)]
    public int Entities { get; set; }

    /// <summary>Draws the slots.</summary>
    [GlobalSetup]
    public void SetUp()
    {
        _file = Encoding.ASCII.GetBytes(Drawing(Entities / 4));
        _path = Path.Combine(Directory.CreateTempSubdirectory("flushback-bench-").FullName, "slots.dxf");
        File.WriteAllBytes(_path, _file);
        _drawing = Read();
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{_file.Length / 1e6:F1} MB"));
    }

    /// <summary>Bytes to lines and arcs.</summary>
    [Benchmark]
    public DxfDrawing Read() => DxfReader.Read(_file, Options).Drawing!;

    /// <summary>Loose lines and arcs to contours.</summary>
    [Benchmark]
    public ChainResult Chain() => DxfContours.ContoursOf(_drawing, "BLADE", 0.01);

    /// <summary>ezdxf (Debian: python3-ezdxf) reading the same file; its interpreter starts anew each time, about 0.3 s.</summary>
    [Benchmark(Baseline = true)]
    public int Ezdxf()
    {
        using Process process = Process.Start(
            "/usr/bin/python3",
            ["-c", "import ezdxf, sys; ezdxf.readfile(sys.argv[1])", _path]
        );
        process.WaitForExit();
        return process.ExitCode;
    }

    private static string Drawing(int slots)
    {
        StringBuilder text = new(
            "  0\nSECTION\n  2\nHEADER\n  9\n$INSUNITS\n 70\n4\n  0\nENDSEC\n  0\nSECTION\n  2\nENTITIES\n"
        );
        int handle = 16;
        Random random = new(1);
        for (int i = 0; i < slots; i++)
        {
            double x = (i % 500 * 61.234567) + random.NextDouble();
            double y = (i / 500 * 20.345678) + random.NextDouble();
            Line(x, y, x + 30, y);
            Arc(x + 30, y + 5, 270, 90);
            Line(x, y + 10, x + 30, y + 10);
            Arc(x, y + 5, 90, 270);
        }

        return text.Append("  0\nENDSEC\n  0\nEOF\n").ToString();

        void Open(string type, string subclass) =>
            text.Append(
                CultureInfo.InvariantCulture,
                $"  0\n{type}\n  5\n{handle++:X}\n330\n1F\n100\nAcDbEntity\n  8\nBLADE\n100\n{subclass}\n"
            );

        void Line(double x1, double y1, double x2, double y2)
        {
            Open("LINE", "AcDbLine");
            text.Append(
                CultureInfo.InvariantCulture,
                $" 10\n{x1:R}\n 20\n{y1:R}\n 30\n0.0\n 11\n{x2:R}\n 21\n{y2:R}\n 31\n0.0\n"
            );
        }

        void Arc(double x, double y, double from, double to)
        {
            Open("ARC", "AcDbCircle");
            text.Append(
                CultureInfo.InvariantCulture,
                $" 10\n{x:R}\n 20\n{y:R}\n 30\n0.0\n 40\n5.0\n100\nAcDbArc\n 50\n{from:R}\n 51\n{to:R}\n"
            );
        }
    }
}
