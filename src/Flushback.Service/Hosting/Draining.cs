using Microsoft.Extensions.Diagnostics.HealthChecks;
using Microsoft.Extensions.Options;

namespace Flushback.Service.Hosting;

/// <summary>
/// Ends the service in order: not ready as soon as it is told to stop, taking calls until balancers have noticed, then
/// finishing those under way.
/// </summary>
public sealed class Draining(IHostApplicationLifetime lifetime, IOptions<DrainOptions> options)
    : IHostedLifecycleService,
        IHealthCheck,
        IDisposable
{
    private readonly CancellationTokenSource _finishing = new();

    /// <summary>Cancelled when what is under way is to be finished: streams take in nothing more.</summary>
    public CancellationToken Finishing => _finishing.Token;

    /// <summary>Ready until the service is told to stop.</summary>
    public Task<HealthCheckResult> CheckHealthAsync(
        HealthCheckContext context,
        CancellationToken cancellationToken = default
    ) =>
        Task.FromResult(
            lifetime.ApplicationStopping.IsCancellationRequested
                ? HealthCheckResult.Unhealthy()
                : HealthCheckResult.Healthy()
        );

    /// <summary>Runs before anything is stopped.</summary>
    public async Task StoppingAsync(CancellationToken cancellationToken)
    {
        await Task.Delay(TimeSpan.FromSeconds(options.Value.NoticeSeconds), cancellationToken)
            .ContinueWith(_ => { }, CancellationToken.None, TaskContinuationOptions.None, TaskScheduler.Default);
        await _finishing.CancelAsync();
    }

    /// <inheritdoc/>
    public Task StartingAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    /// <inheritdoc/>
    public Task StartAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    /// <inheritdoc/>
    public Task StartedAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    /// <inheritdoc/>
    public Task StopAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    /// <inheritdoc/>
    public Task StoppedAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    /// <inheritdoc/>
    public void Dispose() => _finishing.Dispose();
}
