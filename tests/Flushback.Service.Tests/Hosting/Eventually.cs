namespace Flushback.Service.Tests.Hosting;

/// <summary>Waits for what happens soon, but not at once.</summary>
internal static class Eventually
{
    // So long that only what never happens comes to the end of it, however busy the machine is.
    private static readonly TimeSpan _longest = TimeSpan.FromMinutes(5);

    /// <summary>Looks until it is true.</summary>
    public static Task IsTrueAsync(Func<bool> condition) => IsTrueAsync(() => Task.FromResult(condition()));

    /// <summary>Asks until the answer is yes.</summary>
    public static async Task IsTrueAsync(Func<Task<bool>> condition)
    {
        using CancellationTokenSource limit = new(_longest);
        while (!await condition())
        {
            await Task.Delay(10, limit.Token);
        }
    }

    /// <summary>Waits for the end of what would otherwise hold up the tests for ever.</summary>
    public static Task EndsAsync(Task work) => work.WaitAsync(_longest);
}
