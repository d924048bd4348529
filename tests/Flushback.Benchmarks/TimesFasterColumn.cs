using BenchmarkDotNet.Columns;
using BenchmarkDotNet.Reports;
using BenchmarkDotNet.Running;

namespace Flushback.Benchmarks;

/// <summary>How many times faster than the baseline of the same run: a ratio that can be read when it is in the thousands.</summary>
public sealed class TimesFasterColumn : IColumn
{
    /// <inheritdoc/>
    public string Id => nameof(TimesFasterColumn);

    /// <inheritdoc/>
    public string ColumnName => "Faster";

    /// <inheritdoc/>
    public string Legend => "Mean of the baseline over the mean, in the same run";

    /// <inheritdoc/>
    public bool AlwaysShow => true;

    /// <inheritdoc/>
    public ColumnCategory Category => ColumnCategory.Baseline;

    /// <inheritdoc/>
    public int PriorityInCategory => 0;

    /// <inheritdoc/>
    public bool IsNumeric => true;

    /// <inheritdoc/>
    public UnitType UnitType => UnitType.Dimensionless;

    /// <inheritdoc/>
    public bool IsAvailable(Summary summary) => true;

    /// <inheritdoc/>
    public bool IsDefault(Summary summary, BenchmarkCase benchmarkCase) => false;

    /// <inheritdoc/>
    public string GetValue(Summary summary, BenchmarkCase benchmarkCase) =>
        GetValue(summary, benchmarkCase, SummaryStyle.Default);

    /// <inheritdoc/>
    public string GetValue(Summary summary, BenchmarkCase benchmarkCase, SummaryStyle style)
    {
        BenchmarkCase? baseline = summary.BenchmarksCases.FirstOrDefault(other =>
            other.Descriptor.Baseline && other.Parameters.DisplayInfo == benchmarkCase.Parameters.DisplayInfo
        );
        double? slow = baseline is null ? null : summary[baseline]?.ResultStatistics?.Mean;
        double? fast = summary[benchmarkCase]?.ResultStatistics?.Mean;
        return slow / fast is { } times ? FormattableString.Invariant($"{times:#,##0} x") : "-";
    }
}
