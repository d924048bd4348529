using Flushback.Reports.Sheets;

namespace Flushback.Reports.Page;

/// <summary>What the page shows of a blade: the report in words, and its pictures as SVG text.</summary>
internal sealed record BladeContent(
    // What every id begins with; empty where there is one blade.
    string Prefix,
    ReportSheet Sheet,
    IReadOnlyList<StopOnPage> Stops,
    string Chart,
    string NarrowChart,
    string Knife,
    HandleSheet? Handle,
    IReadOnlyList<CaptionedPicture> HandleCharts
);

/// <summary>A picture as SVG text, and what is said under it.</summary>
internal sealed record CaptionedPicture(string Picture, string Caption);

/// <summary>A stop in words and pictures.</summary>
internal sealed record StopOnPage(StopRow Row, string Picture, string Gauge);
