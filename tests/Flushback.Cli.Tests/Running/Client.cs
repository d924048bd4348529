using System.Diagnostics;

namespace Flushback.Cli.Tests.Running;

/// <summary>The built client as a process of its own.</summary>
internal static class Client
{
    private static readonly string _program = Path.Combine(AppContext.BaseDirectory, "flushback.dll");

    /// <summary>Runs it to its end.</summary>
    public static Task<Ending> RunAsync(params string[] args) => RunWithAsync([], args);

    /// <summary>Runs it to its end, with variables in its environment.</summary>
    public static async Task<Ending> RunWithAsync(Dictionary<string, string> variables, params string[] args)
    {
        using Process process = Start(variables, args);
        Task<string> output = process.StandardOutput.ReadToEndAsync();
        Task<string> error = process.StandardError.ReadToEndAsync();
        await process.WaitForExitAsync();
        return new Ending(process.ExitCode, await output, await error);
    }

    /// <summary>Starts it, for a test that ends it by force.</summary>
    public static Process Start(params string[] args) => Start([], args);

    private static Process Start(Dictionary<string, string> variables, string[] args)
    {
        ProcessStartInfo start = new("dotnet", [_program, .. args])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            WorkingDirectory = Path.GetTempPath(),
        };
        foreach ((string name, string value) in variables)
        {
            start.Environment[name] = value;
        }

        return Process.Start(start)!;
    }
}

/// <summary>How a run ended.</summary>
/// <param name="ExitCode">0 clean, 1 findings, 2 bad input, 3 no server.</param>
/// <param name="Output">Standard output.</param>
/// <param name="Error">Standard error.</param>
internal sealed record Ending(int ExitCode, string Output, string Error)
{
    /// <summary>The complaints, one a line, without the program's name.</summary>
    public string[] Complaints =>
        [
            .. Error
                .Split('\n', StringSplitOptions.RemoveEmptyEntries)
                .Select(line => line.Replace("flushback: ", "", StringComparison.Ordinal)),
        ];
}
