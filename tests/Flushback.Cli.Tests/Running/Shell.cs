using System.Diagnostics;

namespace Flushback.Cli.Tests.Running;

/// <summary>A shell that knows the built client by the name flushback.</summary>
internal static class Shell
{
    /// <summary>Runs a script in a shell and gives what it printed.</summary>
    /// <param name="bench">Where the name is kept.</param>
    /// <param name="shell">Program of the shell, such as bash.</param>
    /// <param name="script">What it runs.</param>
    /// <param name="variables">What else is in its environment.</param>
    public static async Task<string> RunAsync(
        Workbench bench,
        string shell,
        string script,
        params (string Name, string Value)[] variables
    )
    {
        string folder = bench.PathOf("path");
        Directory.CreateDirectory(folder);
        string program = Path.Combine(folder, "flushback");
        await File.WriteAllTextAsync(
            program,
            $"#!/bin/sh\nexec dotnet '{Path.Combine(AppContext.BaseDirectory, "flushback.dll")}' \"$@\"\n"
        );
        if (!OperatingSystem.IsWindows())
        {
            File.SetUnixFileMode(program, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
        }

        ProcessStartInfo start = new(shell, [.. NoSettings(shell), "-c", script])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            RedirectStandardInput = true,
            WorkingDirectory = bench.PathOf(""),
        };
        start.Environment["PATH"] = $"{folder}:{Environment.GetEnvironmentVariable("PATH")}";
        foreach ((string name, string value) in variables)
        {
            start.Environment[name] = value;
        }

        using Process process = Process.Start(start)!;
        process.StandardInput.Close();
        Task<string> error = process.StandardError.ReadToEndAsync();
        string output = await process.StandardOutput.ReadToEndAsync();
        await process.WaitForExitAsync();
        Assert.Equal("", await error);
        return output;
    }

    // What this machine's user has set for himself stays out of the tests.
    private static string[] NoSettings(string shell) =>
        shell switch
        {
            "bash" => ["--norc", "--noprofile"],
            "zsh" => ["-f"],
            "fish" => ["--no-config"],
            _ => [],
        };
}
