using System.Globalization;

namespace Flushback.Dxf.Writing;

/// <summary>Finds names of layers that a drawing does not have yet, so that ours hold nothing but what is ours.</summary>
public static class FreeLayerNames
{
    /// <summary>What to put behind names of layers so that none of them is in the drawing.</summary>
    /// <param name="original">A file that <c>DxfReader</c> has accepted.</param>
    /// <param name="names">The names wanted.</param>
    /// <returns>Nothing where all are free, else <c>_2</c>, <c>_3</c> and so on.</returns>
    /// <exception cref="ArgumentException">The file is none the reader accepts.</exception>
    public static string SuffixFor(ReadOnlyMemory<byte> original, IReadOnlyCollection<string> names)
    {
        ArgumentNullException.ThrowIfNull(names);
        DrawingSurvey survey = OpenedDrawing.Of(original).Survey;
        string suffix = "";
        for (int i = 2; names.Any(name => survey.LayerNames.ContainsKey(name + suffix)); i++)
        {
            suffix = string.Create(CultureInfo.InvariantCulture, $"_{i}");
        }

        return suffix;
    }
}
