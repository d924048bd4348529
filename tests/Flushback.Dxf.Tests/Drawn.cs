using System.Globalization;
using System.Text;
using Flushback.Dxf.Drawings;
using Flushback.Dxf.Reading;

namespace Flushback.Dxf.Tests;

/// <summary>Small drawings written out by hand, group by group, as a CAD program would.</summary>
internal static class Drawn
{
    public const string InMillimetres = "9\n$INSUNITS\n70\n4\n";

    /// <summary>A whole file around some entities.</summary>
    public static string File(string entities, string header = InMillimetres, string tables = "") =>
        Section("HEADER", header)
        + (tables.Length > 0 ? Section("TABLES", tables) : "")
        + Section("ENTITIES", entities)
        + "0\nEOF\n";

    public static string Section(string name, string content) => $"0\nSECTION\n2\n{name}\n{content}0\nENDSEC\n";

    public static string Line(double x1, double y1, double x2, double y2, string layer = "BLADE", string handle = "") =>
        Entity("LINE", layer, handle) + Groups((10, x1), (20, y1), (11, x2), (21, y2));

    public static string Arc(
        double x,
        double y,
        double radius,
        double from,
        double to,
        string layer = "BLADE",
        string handle = ""
    ) => Entity("ARC", layer, handle) + Groups((10, x), (20, y), (40, radius), (50, from), (51, to));

    public static string Circle(double x, double y, double radius, string layer = "BLADE", string handle = "") =>
        Entity("CIRCLE", layer, handle) + Groups((10, x), (20, y), (40, radius));

    public static string Polyline(bool isClosed, string layer, params (double X, double Y, double Bulge)[] vertices) =>
        Entity("LWPOLYLINE", layer, "2F")
        + $"90\n{vertices.Length}\n70\n{(isClosed ? 1 : 0)}\n"
        + string.Concat(vertices.Select(v => Groups((10, v.X), (20, v.Y), (42, v.Bulge))));

    public static string Entity(string type, string layer, string handle = "") =>
        $"0\n{type}\n" + (handle.Length > 0 ? $"5\n{handle}\n" : "") + $"8\n{layer}\n";

    public static string Groups(params (int Code, double Value)[] groups) =>
        string.Concat(groups.Select(g => string.Create(CultureInfo.InvariantCulture, $"{g.Code}\n{g.Value:R}\n")));

    public static DxfReadResult Read(string file, DrawingUnit? unit = null) =>
        DxfReader.Read(Encoding.UTF8.GetBytes(file), new DxfReadOptions { Unit = unit });

    /// <summary>Reads a file that must be fine.</summary>
    public static DxfDrawing Drawing(string file, DrawingUnit? unit = null)
    {
        DxfReadResult result = Read(file, unit);
        Assert.DoesNotContain(result.Issues, issue => issue.IsFatal);
        return Assert.IsType<DxfDrawing>(result.Drawing);
    }
}
