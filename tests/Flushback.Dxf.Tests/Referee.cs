using System.Diagnostics;
using System.Runtime.CompilerServices;
using System.Text.Json;

namespace Flushback.Dxf.Tests;

/// <summary>Independent readers and writers, each in a process of its own. When one is missing, the test fails.</summary>
internal static class Referee
{
    private static readonly Lock Installing = new();

    /// <summary>What ezdxf (Debian: python3-ezdxf) sees in a file.</summary>
    public static JsonElement Dump(byte[] dxf) => Python("dxf_referee.py", "dump", Kept(dxf));

    /// <summary>Points that ezdxf computes on everything in a file's model space, by layer.</summary>
    public static JsonElement Sample(string path) => Python("dxf_referee.py", "sample", path);

    /// <summary>Drawings that ezdxf writes, and what it put in them.</summary>
    public static (string Folder, JsonElement Contents) Make()
    {
        string folder = Directory.CreateTempSubdirectory("flushback-ezdxf-").FullName;
        return (folder, Python("dxf_referee.py", "make", folder));
    }

    /// <summary>What a reader from npm sees in a file: <c>dxf</c> or <c>dxf-parser</c>, in the versions locked there.</summary>
    public static JsonElement DumpByNode(string reader, byte[] dxf)
    {
        string folder = Path.Combine(InteropFolder(), "dxf-readers");
        lock (Installing)
        {
            if (!Directory.Exists(Path.Combine(folder, "node_modules")))
            {
                Output("npm", "ci", "--ignore-scripts", "--no-audit", "--prefix", folder);
            }
        }

        return Json(Output("node", Path.Combine(folder, "dump.cjs"), reader, Kept(dxf)));
    }

    /// <summary>The size of the page that a CAD program (Debian: librecad) prints of a file, fitted to the sheet.</summary>
    public static int PrintedBytes(byte[] dxf)
    {
        string path = Kept(dxf);
        string page = Path.ChangeExtension(path, ".pdf");
        Output("librecad", "dxf2pdf", "-a", "-o", page, path);
        Assert.True(File.Exists(page), "The CAD program printed nothing.");
        return (int)new FileInfo(page).Length;
    }

    /// <summary>The edges that a solid modeller (Debian: libfreecad-python3-0.20) makes of a text file, in its order.</summary>
    public static JsonElement Modelled(byte[] dxf) => Python("cad_referee.py", Kept(dxf));

    private static JsonElement Python(string script, params string[] arguments) =>
        Json(
            Output(
                Environment.GetEnvironmentVariable("FLUSHBACK_PYTHON") ?? "/usr/bin/python3",
                [Path.Combine(InteropFolder(), script), .. arguments]
            )
        );

    private static JsonElement Json(string text) => JsonDocument.Parse(text).RootElement;

    private static string Kept(byte[] dxf)
    {
        string path = Path.Combine(Directory.CreateTempSubdirectory("flushback-dxf-").FullName, "drawing.dxf");
        File.WriteAllBytes(path, dxf);
        return path;
    }

    private static string Output(string program, params string[] arguments)
    {
        ProcessStartInfo start = new(program, arguments)
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        start.Environment["QT_QPA_PLATFORM"] = "offscreen";
        using Process process =
            Process.Start(start) ?? throw new InvalidOperationException($"The referee {program} did not start.");
        Task<string> errors = process.StandardError.ReadToEndAsync();
        string output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        Assert.True(
            process.ExitCode == 0,
            $"The referee {program} {string.Join(' ', arguments)} failed: {errors.Result}"
        );
        return output;
    }

    private static string InteropFolder([CallerFilePath] string thisFile = "") =>
        Path.Combine(Path.GetDirectoryName(thisFile)!, "..", "interop");
}
