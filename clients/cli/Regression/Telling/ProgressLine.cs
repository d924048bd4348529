namespace Flushback.Cli.Regression.Telling;

/// <summary>A bar on standard error that fills as items are finished; nothing where that is no terminal.</summary>
/// <param name="all">How many items there are.</param>
internal sealed class ProgressLine(int all) : IProgress<int>, IDisposable
{
    private const int Width = 30;

    private readonly bool _isShown = !Console.IsErrorRedirected && all > 0;
    private int _shown = -1;

    /// <summary>So many are finished.</summary>
    public void Report(int value)
    {
        int permille = all == 0 ? 1000 : (int)(1000L * value / all);
        if (!_isShown || permille == _shown)
        {
            return;
        }

        _shown = permille;
        int filled = Width * value / all;
        Console.Error.Write(
            FormattableString.Invariant(
                $"\r[{new string('=', filled)}{new string(' ', Width - filled)}] {value:N0} of {all:N0}"
            )
        );
    }

    /// <summary>Takes the bar away.</summary>
    public void Dispose()
    {
        if (_isShown && _shown >= 0)
        {
            Console.Error.Write($"\r{new string(' ', Width + 30)}\r");
        }
    }
}
