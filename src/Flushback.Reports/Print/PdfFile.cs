using PdfSharp.Drawing;
using PdfSharp.Pdf;

namespace Flushback.Reports.Print;

/// <summary>Sheets as a PDF file to be printed at its own size. The same sheets give the same bytes, always.</summary>
public static class PdfFile
{
    // Any fixed day will do; a file that told when it was made would differ from the next one.
    private static readonly DateTime _anyDay = new(2000, 1, 1, 0, 0, 0, DateTimeKind.Utc);

    /// <summary>Writes the sheets, a page each.</summary>
    /// <param name="title">What the file is, for the window it is shown in.</param>
    /// <param name="sheets">One at least.</param>
    /// <exception cref="ArgumentException">There is no sheet, or something on one lies at no place at all (NaN or infinite).</exception>
    public static byte[] Write(string title, IReadOnlyCollection<PrintSheet> sheets)
    {
        ArgumentNullException.ThrowIfNull(sheets);
        if (sheets.Count == 0)
        {
            throw new ArgumentException("A file to be printed needs a sheet.", nameof(sheets));
        }

        lock (PrintFonts.Turn)
        {
            using PdfDocument document = new();
            Describe(document, title);
            foreach (PrintSheet sheet in sheets)
            {
                Add(document, sheet);
            }

            using MemoryStream bytes = new();
            document.Save(bytes, closeStream: false);
            return FixedIds.In(bytes.ToArray());
        }
    }

    private static void Describe(PdfDocument document, string title)
    {
        document.Info.Title = title;
        document.Info.Creator = "Flushback";
        document.Info.CreationDate = _anyDay;
        document.Info.ModificationDate = _anyDay;
        document.Options.CompressContentStreams = true;

        // Asks the viewer to print at the size drawn instead of fitting it to the page.
        document.ViewerPreferences.Elements.SetName("/PrintScaling", "/None");
        document.ViewerPreferences.DisplayDocTitle = true;
    }

    private static void Add(PdfDocument document, PrintSheet sheet)
    {
        PdfPage page = document.AddPage();
        page.Width = XUnit.FromMillimeter(sheet.Format.WidthMm);
        page.Height = XUnit.FromMillimeter(sheet.Format.HeightMm);
        using XGraphics graphics = XGraphics.FromPdfPage(page, XGraphicsUnit.Point);
        sheet.DrawOn(graphics);
    }
}
