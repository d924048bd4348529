using System.Globalization;
using System.Text;
using Flushback.Dxf;
using Flushback.Dxf.Reading;
using Flushback.Geometry;

namespace Flushback.Inspection.Tests;

/// <summary>Small drawings for the shop, written out by hand, and what the inspection says of them.</summary>
internal static class Sheet
{
    public const string InMillimetres = "9\n$INSUNITS\n70\n4\n";
    public const string InInches = "9\n$INSUNITS\n70\n1\n";

    public static InspectionSettings Defaults { get; } = new();

    /// <summary>A whole file around some entities.</summary>
    public static string File(string entities, string header = InMillimetres) =>
        $"0\nSECTION\n2\nHEADER\n{header}0\nENDSEC\n0\nSECTION\n2\nENTITIES\n{entities}0\nENDSEC\n0\nEOF\n";

    public static string Line(double x1, double y1, double x2, double y2, string handle, string layer = "CUT") =>
        Entity("LINE", layer, handle) + Groups((10, x1), (20, y1), (11, x2), (21, y2));

    public static string Arc(
        double x,
        double y,
        double radius,
        double from,
        double to,
        string handle,
        string layer = "CUT"
    ) => Entity("ARC", layer, handle) + Groups((10, x), (20, y), (40, radius), (50, from), (51, to));

    public static string Circle(double x, double y, double radius, string handle, string layer = "CUT") =>
        Entity("CIRCLE", layer, handle) + Groups((10, x), (20, y), (40, radius));

    public static string Closed(string handle, params (double X, double Y, double Bulge)[] vertices) =>
        Closed(handle, "CUT", vertices);

    public static string Closed(string handle, string layer, params (double X, double Y, double Bulge)[] vertices) =>
        Entity("LWPOLYLINE", layer, handle)
        + string.Create(CultureInfo.InvariantCulture, $"90\n{vertices.Length}\n70\n1\n")
        + string.Concat(vertices.Select(v => Groups((10, v.X), (20, v.Y), (42, v.Bulge))));

    public static string Closed(string handle, Outline outline, string layer = "CUT") =>
        Closed(handle, layer, [.. outline.Vertices.Select(v => (v.Position.X, v.Position.Y, v.Bulge))]);

    /// <summary>A rectangle from its lower left corner, as a polyline.</summary>
    public static string Box(string handle, double x, double y, double width, double height, string layer = "CUT") =>
        Closed(handle, layer, (x, y, 0), (x + width, y, 0), (x + width, y + height, 0), (x, y + height, 0));

    public static string Entity(string type, string layer, string handle) =>
        $"0\n{type}\n" + (handle.Length > 0 ? $"5\n{handle}\n" : "") + $"8\n{layer}\n";

    public static string Groups(params (int Code, double Value)[] groups) =>
        string.Concat(groups.Select(g => string.Create(CultureInfo.InvariantCulture, $"{g.Code}\n{g.Value:R}\n")));

    public static DxfReadResult Read(string file, DrawingUnit? unit = null)
    {
        DxfReadResult result = DxfReader.Read(Encoding.UTF8.GetBytes(file), new DxfReadOptions { Unit = unit });
        Assert.DoesNotContain(result.Issues, issue => issue.IsFatal);
        return result;
    }

    /// <summary>The report on some entities in millimetres.</summary>
    public static InspectionReport Inspect(string entities, InspectionSettings? settings = null) =>
        ProfileInspection.Run(Read(File(entities)), settings ?? Defaults, CancellationToken.None);

    /// <summary>The one finding of a kind.</summary>
    public static InspectionFinding Single(this InspectionReport report, string code) =>
        Assert.Single(report.Findings, finding => finding.Code == code);

    /// <summary>Asserts that there is no finding of a kind.</summary>
    public static void HasNo(this InspectionReport report, string code) =>
        Assert.DoesNotContain(report.Findings, finding => finding.Code == code);
}
