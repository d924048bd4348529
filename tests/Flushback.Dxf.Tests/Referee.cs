using System.Diagnostics;
using System.Runtime.CompilerServices;
using System.Text.Json;

namespace Flushback.Dxf.Tests;

/// <summary>The independent reader and writer: ezdxf in a process of its own. When it is missing, the test fails.</summary>
internal static class Referee
{
    /// <summary>What ezdxf sees in a file.</summary>
    public static JsonElement Dump(byte[] dxf)
    {
        string path = Path.Combine(Directory.CreateTempSubdirectory("flushback-dxf-").FullName, "drawing.dxf");
        File.WriteAllBytes(path, dxf);
        return Run("dump", path);
    }

    /// <summary>Points that ezdxf computes on everything in a file's model space, by layer.</summary>
    public static JsonElement Sample(string path) => Run("sample", path);

    /// <summary>Drawings that ezdxf writes, and what it put in them.</summary>
    public static (string Folder, JsonElement Contents) Make()
    {
        string folder = Directory.CreateTempSubdirectory("flushback-ezdxf-").FullName;
        return (folder, Run("make", folder));
    }

    private static JsonElement Run(string command, string argument)
    {
        ProcessStartInfo start = new(Environment.GetEnvironmentVariable("FLUSHBACK_PYTHON") ?? "/usr/bin/python3")
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            ArgumentList = { ScriptPath(), command, argument },
        };
        using Process process =
            Process.Start(start) ?? throw new InvalidOperationException("The referee's Python did not start.");
        Task<string> errors = process.StandardError.ReadToEndAsync();
        string output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        Assert.True(process.ExitCode == 0, $"The referee (apt-get install python3-ezdxf) failed: {errors.Result}");
        return JsonDocument.Parse(output).RootElement;
    }

    private static string ScriptPath([CallerFilePath] string thisFile = "") =>
        Path.Combine(Path.GetDirectoryName(thisFile)!, "..", "interop", "dxf_referee.py");
}
