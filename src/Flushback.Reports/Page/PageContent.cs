using Flushback.Reports.Sheets;

namespace Flushback.Reports.Page;

/// <summary>What the page shows: the report in words, and its pictures as SVG text.</summary>
internal sealed record PageContent(
    ReportSheet Sheet,
    IReadOnlyList<StopOnPage> Stops,
    string Chart,
    string NarrowChart,
    string Knife,
    HandleSheet? Handle,
    IReadOnlyList<ChartOnPage> HandleCharts
);

/// <summary>A chart of the handle and what is said under it.</summary>
internal sealed record ChartOnPage(string Picture, string Caption);

/// <summary>A stop in words and pictures.</summary>
internal sealed record StopOnPage(StopRow Row, string Picture, string Gauge);
