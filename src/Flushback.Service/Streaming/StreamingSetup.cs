namespace Flushback.Service.Streaming;

/// <summary>Adds what answers a library by one stream.</summary>
internal static class StreamingSetup
{
    /// <summary>Adds the stream and the work on its items.</summary>
    public static void AddStreaming(this IHostApplicationBuilder builder)
    {
        builder.Services.AddSingleton<ItemTelemetry>();
        builder.Services.AddSingleton<ItemWork>();
        builder.Services.AddSingleton<LibraryAnswers>();
    }
}
