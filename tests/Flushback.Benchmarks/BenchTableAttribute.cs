using BenchmarkDotNet.Configs;

namespace Flushback.Benchmarks;

/// <summary>The columns worth keeping in the contributors' guide.</summary>
[AttributeUsage(AttributeTargets.Class)]
public sealed class BenchTableAttribute : Attribute, IConfigSource
{
    /// <inheritdoc/>
    public IConfig Config { get; } =
        ManualConfig.CreateEmpty().AddColumn(new TimesFasterColumn()).HideColumns("Ratio", "RatioSD", "Alloc Ratio");
}
