using Flushback.Service.Limits;

namespace Flushback.Service.Queueing;

/// <summary>Puts the gate before the services.</summary>
internal static class QueueingSetup
{
    /// <summary>Adds the gate and the interceptor that uses it.</summary>
    public static void AddQueueing(this IHostApplicationBuilder builder)
    {
        QueueOptions options = new();
        builder
            .Configuration.GetSection(QueueOptions.Section)
            .Bind(options, binder => binder.ErrorOnUnknownConfiguration = true);
        builder.Services.AddSingleton(options);
        builder.Services.AddSingleton<Callers>();
        builder.Services.AddSingleton<Turns>();
        builder.Services.AddSingleton(provider => Gate(provider.GetRequiredService<ServiceLimits>()));
    }

    private static WorkGate Gate(ServiceLimits limits)
    {
        int parallel = limits.Parallel > 0 ? limits.Parallel : Environment.ProcessorCount;
        KeepThreadsBeside(parallel);
        return new WorkGate(parallel, Math.Max(parallel, limits.ItemsInFlight));
    }

    // What computes has a thread of the pool to itself. With no more threads than cores, as is usual, health, deadlines and
    // whoever hangs up would then wait until the pool notices that it is short of them, which takes half a second.
    private static void KeepThreadsBeside(int parallel)
    {
        ThreadPool.GetMinThreads(out int workers, out int completions);
        ThreadPool.SetMinThreads(Math.Max(workers, parallel + Environment.ProcessorCount), completions);
    }
}
