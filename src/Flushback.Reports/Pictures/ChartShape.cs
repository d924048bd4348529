namespace Flushback.Reports.Pictures;

/// <summary>How much room a chart is drawn for.</summary>
public enum ChartShape
{
    /// <summary>A desk, a sheet of paper.</summary>
    Wide,

    /// <summary>A phone held upright.</summary>
    Narrow,
}
