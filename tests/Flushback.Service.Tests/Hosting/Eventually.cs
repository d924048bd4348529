namespace Flushback.Service.Tests.Hosting;

/// <summary>Waits for what happens soon, but not at once.</summary>
internal static class Eventually
{
    private static readonly TimeSpan _longest = TimeSpan.FromSeconds(20);

    /// <summary>Looks until it is true; far longer than it takes, so that only a failure waits to the end.</summary>
    public static async Task IsTrueAsync(Func<bool> condition)
    {
        using CancellationTokenSource limit = new(_longest);
        while (!condition())
        {
            await Task.Delay(10, limit.Token);
        }
    }
}
