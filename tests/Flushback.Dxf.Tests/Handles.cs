using System.Globalization;
using System.Text;

namespace Flushback.Dxf.Tests;

/// <summary>The handles of a file, found by its lines alone.</summary>
internal static class Handles
{
    /// <summary>Asserts that no handle is given twice and that the handle seed lies above all of them.</summary>
    public static void AssertUniqueBelowTheSeed(byte[] file)
    {
        string[] lines = Encoding.UTF8.GetString(file).ReplaceLineEndings("\n").Split('\n');
        List<long> handles = [];
        long seed = 0;
        for (int i = 0; i + 1 < lines.Length; i += 2)
        {
            string code = lines[i].Trim();
            if (i > 0 && lines[i - 1].Trim() == "$HANDSEED")
            {
                seed = long.Parse(lines[i + 1], NumberStyles.HexNumber, CultureInfo.InvariantCulture);
            }
            else if (
                code is "5" or "105"
                && long.TryParse(lines[i + 1], NumberStyles.HexNumber, CultureInfo.InvariantCulture, out long handle)
            )
            {
                handles.Add(handle);
            }
        }

        Assert.NotEmpty(handles);
        Assert.Equal(handles.Count, handles.Distinct().Count());
        Assert.True(seed > handles.Max());
    }
}
