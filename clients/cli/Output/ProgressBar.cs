using Spectre.Console;

namespace Flushback.Cli.Output;

/// <summary>How far something has come, on standard error; nothing when that is no terminal.</summary>
internal static class ProgressBar
{
    /// <summary>Shows a bar while work is done.</summary>
    /// <param name="unit">What is counted, in the plural.</param>
    /// <param name="isWanted">False to show none.</param>
    /// <param name="work">The work; tells how many are done, of how many.</param>
    public static async Task ShowAsync(string unit, bool isWanted, Func<Action<int, int>, Task> work)
    {
        if (!isWanted || Console.IsErrorRedirected)
        {
            await work(static (_, _) => { });
            return;
        }

        IAnsiConsole console = AnsiConsole.Create(
            new AnsiConsoleSettings { Out = new AnsiConsoleOutput(Console.Error) }
        );
        await console
            .Progress()
            .AutoClear(true)
            .Columns(new TaskDescriptionColumn(), new ProgressBarColumn(), new PercentageColumn())
            .StartAsync(async progress =>
            {
                ProgressTask bar = progress.AddTask(unit);
                await work(
                    (done, all) =>
                    {
                        bar.MaxValue = all;
                        bar.Value = done;
                    }
                );
            });
    }
}
