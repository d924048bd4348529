using Flushback.Contract.V1;

namespace Flushback.Cli.Arguments;

/// <summary>Words for paper, unit and version of what is drawn.</summary>
internal static class DrawingForm
{
    private static readonly Dictionary<string, PaperSize> _papers = new(StringComparer.OrdinalIgnoreCase)
    {
        ["a4"] = PaperSize.A4,
        ["letter"] = PaperSize.Letter,
    };

    private static readonly Dictionary<string, LengthUnit> _units = new(StringComparer.OrdinalIgnoreCase)
    {
        ["mm"] = LengthUnit.Millimetre,
        ["in"] = LengthUnit.Inch,
    };

    private static readonly Dictionary<string, DxfVersion> _versions = new(StringComparer.OrdinalIgnoreCase)
    {
        ["r12"] = DxfVersion.R12,
        ["2000"] = DxfVersion.R2000,
        ["2007"] = DxfVersion.R2007,
        ["2010"] = DxfVersion.R2010,
        ["2013"] = DxfVersion.R2013,
        ["2018"] = DxfVersion.R2018,
    };

    /// <summary>Reads the name of a paper.</summary>
    public static bool TryPaper(string text, out PaperSize paper) => _papers.TryGetValue(text, out paper);

    /// <summary>What is wrong with a text that names no paper.</summary>
    public static string PaperComplaint(string text) => $"'{text}' is no paper that is printed on; say a4 or letter.";

    /// <summary>Reads a unit to draw in.</summary>
    public static bool TryUnit(string text, out LengthUnit unit) => _units.TryGetValue(text, out unit);

    /// <summary>What is wrong with a text that names no such unit.</summary>
    public static string UnitComplaint(string text) => $"'{text}' is no unit that is drawn in; say mm or in.";

    /// <summary>Reads a version of DXF.</summary>
    public static bool TryVersion(string text, out DxfVersion version) => _versions.TryGetValue(text, out version);

    /// <summary>What is wrong with a text that names no version.</summary>
    public static string VersionComplaint(string text) =>
        $"'{text}' is no version that is written; say {string.Join(", ", _versions.Keys.SkipLast(1))} or {_versions.Keys.Last()}.";
}
