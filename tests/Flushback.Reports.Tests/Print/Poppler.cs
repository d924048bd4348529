using System.Diagnostics;
using System.Globalization;
using System.Text;

namespace Flushback.Reports.Tests.Print;

/// <summary>Another program's reading of a PDF: Debian's poppler-utils.</summary>
internal static class Poppler
{
    private const int PixelsPerInch = 600;

    /// <summary>A page as a printer of 600 dots an inch would put it on paper.</summary>
    public static RenderedPage Render(byte[] pdf, int page = 1)
    {
        string number = page.ToString(CultureInfo.InvariantCulture);
        string dots = PixelsPerInch.ToString(CultureInfo.InvariantCulture);
        byte[] picture = Run("pdftoppm", pdf, "-gray", "-r", dots, "-f", number, "-l", number, "-");
        return RenderedPage.FromPortableGraymap(picture, PixelsPerInch);
    }

    /// <summary>The words of all pages, laid out as on paper.</summary>
    public static string Words(byte[] pdf) => Encoding.UTF8.GetString(Run("pdftotext", pdf, "-layout", "-", "-"));

    /// <summary>What the file tells of itself and its pages.</summary>
    public static string Info(byte[] pdf) => Encoding.UTF8.GetString(Run("pdfinfo", pdf, "-"));

    /// <summary>The fonts it uses, and whether they are embedded.</summary>
    public static string Fonts(byte[] pdf) => Encoding.UTF8.GetString(Run("pdffonts", pdf, "-"));

    private static byte[] Run(string program, byte[] pdf, params string[] arguments)
    {
        ProcessStartInfo start = new(program, arguments)
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        using Process process = Process.Start(start)!;
        Task<string> complaints = process.StandardError.ReadToEndAsync();
        Task feeding = Task.Run(() =>
        {
            using Stream input = process.StandardInput.BaseStream;
            input.Write(pdf);
        });
        using MemoryStream output = new();
        process.StandardOutput.BaseStream.CopyTo(output);
        process.WaitForExit();
        feeding.Wait();
        Assert.Equal("", complaints.Result);
        Assert.Equal(0, process.ExitCode);
        return output.ToArray();
    }
}
