using PdfSharp.Drawing;
using PdfSharp.Fonts;

namespace Flushback.Reports.Print;

/// <summary>The type that pages are set in. It comes with the program, since a machine may have none.</summary>
public static class PrintFonts
{
    private const string Family = "DejaVu Sans";
    private const string Regular = "DejaVuSans.ttf";
    private const string Bold = "DejaVuSans-Bold.ttf";

    // The library keeps its fonts in common caches, and asks one resolver for all of a process.
    static PrintFonts() => GlobalFontSettings.FontResolver = new CarriedFonts();

    /// <summary>Held by whoever measures or writes: the library beneath shares its caches between threads.</summary>
    internal static Lock Turn { get; } = new();

    /// <summary>Width of a line of words, in millimetres.</summary>
    public static double WidthMm(string words, TextStyle style)
    {
        lock (Turn)
        {
            using XGraphics measure = XGraphics.CreateMeasureContext(
                new XSize(1000, 1000),
                XGraphicsUnit.Point,
                XPageDirection.Downwards
            );
            return XUnit.FromPoint(measure.MeasureString(words, FontOf(style)).Width).Millimeter;
        }
    }

    /// <summary>Words broken into lines no wider than a width, at their spaces; a longer word stands alone and stays whole.</summary>
    public static IReadOnlyList<string> Lines(string words, TextStyle style, double widthMm)
    {
        ArgumentNullException.ThrowIfNull(words);
        List<string> lines = [];
        string line = "";
        foreach (string word in words.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            string longer = line.Length == 0 ? word : $"{line} {word}";
            if (line.Length > 0 && WidthMm(longer, style) > widthMm)
            {
                lines.Add(line);
                longer = word;
            }

            line = longer;
        }

        lines.Add(line);
        return lines;
    }

    /// <summary>The font of a style; <see cref="Turn"/> is held by the caller.</summary>
    internal static XFont FontOf(TextStyle style) =>
        new(Family, PaperPlaces.PointsOf(style.SizeMm), style.IsBold ? XFontStyleEx.Bold : XFontStyleEx.Regular);

    private sealed class CarriedFonts : IFontResolver
    {
        public FontResolverInfo ResolveTypeface(string familyName, bool isBold, bool isItalic) =>
            new(isBold ? Bold : Regular);

        public byte[] GetFont(string faceName)
        {
            using Stream file =
                typeof(CarriedFonts).Assembly.GetManifestResourceStream(faceName)
                ?? throw new InvalidOperationException($"The program was built without its font {faceName}.");
            byte[] bytes = new byte[file.Length];
            file.ReadExactly(bytes);
            return bytes;
        }
    }
}
