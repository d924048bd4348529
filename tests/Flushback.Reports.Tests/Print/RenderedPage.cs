using System.Globalization;
using System.Text;
using Flushback.Geometry;

namespace Flushback.Reports.Tests.Print;

/// <summary>A page in pixels, measured in millimetres from its lower left corner.</summary>
/// <remarks>
/// Edges are smoothed over neighbouring pixels, so the middle of the darkness about a line is its place to a small part of
/// a pixel (0.042 mm at 600 dots an inch).
/// </remarks>
internal sealed class RenderedPage(int width, int height, byte[] greys, double pixelMm)
{
    private const double InchMm = 25.4;

    public double WidthMm => width * pixelMm;

    public double HeightMm => height * pixelMm;

    /// <summary>Reads the binary form, <c>P5 width height 255</c> and a byte a pixel.</summary>
    public static RenderedPage FromPortableGraymap(byte[] file, int pixelsPerInch)
    {
        int at = 0;
        List<string> words = [];
        while (words.Count < 4)
        {
            int end = at;
            while (!char.IsWhiteSpace((char)file[end]))
            {
                end++;
            }

            words.Add(Encoding.ASCII.GetString(file, at, end - at));
            at = end + 1;
        }

        Assert.Equal("P5", words[0]);
        Assert.Equal("255", words[3]);
        int width = int.Parse(words[1], CultureInfo.InvariantCulture);
        int height = int.Parse(words[2], CultureInfo.InvariantCulture);
        Assert.Equal(width * height, file.Length - at);
        return new RenderedPage(width, height, file[at..], InchMm / pixelsPerInch);
    }

    /// <summary>Where the darkness of a box has its middle. The box has to hold some.</summary>
    public Point MiddleOfInk(Box box)
    {
        double sum = 0;
        double sumX = 0;
        double sumY = 0;
        foreach ((int column, int row) in PixelsOf(box))
        {
            double darkness = Darkness(column, row);
            sum += darkness;
            sumX += darkness * (column + 0.5);
            sumY += darkness * (row + 0.5);
        }

        Assert.True(sum > 0, $"Nothing is drawn in {box}.");
        return new Point(sumX / sum * pixelMm, (height - (sumY / sum)) * pixelMm);
    }

    /// <summary>Share of a box that is dark, from 0 to 1.</summary>
    public double ShareOfInk(Box box)
    {
        double sum = 0;
        int count = 0;
        foreach ((int column, int row) in PixelsOf(box))
        {
            sum += Darkness(column, row);
            count++;
        }

        return sum / count;
    }

    private double Darkness(int column, int row) => (255 - greys[(row * width) + column]) / 255.0;

    private IEnumerable<(int Column, int Row)> PixelsOf(Box box)
    {
        int left = Math.Max(0, (int)Math.Floor(box.MinX / pixelMm));
        int right = Math.Min(width - 1, (int)Math.Floor(box.MaxX / pixelMm));
        int top = Math.Max(0, height - 1 - (int)Math.Floor(box.MaxY / pixelMm));
        int bottom = Math.Min(height - 1, height - 1 - (int)Math.Floor(box.MinY / pixelMm));
        for (int row = top; row <= bottom; row++)
        {
            for (int column = left; column <= right; column++)
            {
                yield return (column, row);
            }
        }
    }
}
