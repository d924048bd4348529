using System.Text;

namespace Flushback.Dxf.Tests;

/// <summary>Makes damaged drawings out of sound ones: knows groups and values, and sometimes forgets that it does.</summary>
internal sealed class DrawingMutator(IReadOnlyList<byte[]> corpus, int seed)
{
    private static readonly string[] Values =
    [
        "0",
        "1",
        "-1",
        "2",
        "3",
        "8",
        "16",
        "64",
        "255",
        "-32768",
        "2147483647",
        "99999999999999999999",
        "0.0",
        "-0.0",
        "1e-320",
        "1e308",
        "-1e308",
        "1e5",
        "100001",
        "nan",
        "inf",
        "1,5",
        "",
        " ",
        "BLADE",
        "SECTION",
        "ENDSEC",
        "EOF",
        "ENTITIES",
        "BLOCKS",
        "HEADER",
        "LINE",
        "ARC",
        "CIRCLE",
        "ELLIPSE",
        "SPLINE",
        "LWPOLYLINE",
        "POLYLINE",
        "VERTEX",
        "SEQEND",
        "INSERT",
        "BLOCK",
        "ENDBLK",
        "S",
        "T",
        "B0",
        "$INSUNITS",
        @"\U+D800",
        "6.283185307179586",
        "359.999999",
    ];

    private static readonly string[] Codes =
    [
        "0",
        "2",
        "5",
        "8",
        "9",
        "10",
        "11",
        "20",
        "21",
        "30",
        "31",
        "40",
        "41",
        "42",
        "44",
        "45",
        "50",
        "51",
        "60",
        "62",
        "66",
        "67",
        "70",
        "71",
        "72",
        "73",
        "74",
        "90",
        "100",
        "210",
        "220",
        "230",
        "330",
        "999",
        "1071",
        "-7",
        "70000",
        "x",
    ];

    private readonly Random _random = new(seed);

    /// <summary>The next damaged drawing.</summary>
    public byte[] Next()
    {
        byte[] drawing = corpus[_random.Next(corpus.Count)];
        bool isBinary = drawing.AsSpan().StartsWith("AutoCAD Binary"u8);
        return isBinary || _random.Next(8) == 0 ? MutateBytes([.. drawing]) : MutateGroups(drawing);
    }

    private byte[] MutateGroups(byte[] drawing)
    {
        List<string> lines = [.. Encoding.Latin1.GetString(drawing).ReplaceLineEndings("\n").Split('\n')];
        for (int times = _random.Next(1, 6); times > 0 && lines.Count > 4; times--)
        {
            // Groups begin on even lines.
            int at = 2 * _random.Next(lines.Count / 2);
            switch (_random.Next(9))
            {
                case 0:
                    lines[at] = Pick(Codes);
                    break;
                case 1 or 2 or 3:
                    lines[at + 1] = Pick(Values);
                    break;
                case 4:
                    lines[at + 1] = (_random.NextDouble() * Math.Pow(10, _random.Next(-6, 6))).ToString(
                        "R",
                        System.Globalization.CultureInfo.InvariantCulture
                    );
                    break;
                case 5:
                    lines.RemoveRange(at, Math.Min(lines.Count - at, 2 * _random.Next(1, 8)));
                    break;
                case 6:
                    List<string> copy = lines.GetRange(at, Math.Min(lines.Count - at, 2 * _random.Next(1, 20)));
                    lines.InsertRange(2 * _random.Next(lines.Count / 2), copy);
                    break;
                case 7:
                    lines.RemoveAt(at);
                    break;
                default:
                    List<string> other =
                    [
                        .. Encoding
                            .Latin1.GetString(corpus[_random.Next(corpus.Count)])
                            .ReplaceLineEndings("\n")
                            .Split('\n'),
                    ];
                    int from = 2 * _random.Next((other.Count / 2) + 1);
                    lines.InsertRange(at, other.GetRange(from, Math.Min(other.Count - from, 40)));
                    break;
            }
        }

        return Encoding.Latin1.GetBytes(string.Join(_random.Next(4) == 0 ? "\r\n" : "\n", lines));
    }

    private byte[] MutateBytes(byte[] bytes)
    {
        for (int times = _random.Next(1, 8); times > 0 && bytes.Length > 30; times--)
        {
            int at = _random.Next(22, bytes.Length);
            switch (_random.Next(4))
            {
                case 0:
                    bytes[at] = (byte)_random.Next(256);
                    break;
                case 1:
                    bytes[at] ^= (byte)(1 << _random.Next(8));
                    break;
                case 2:
                    int end = Math.Min(bytes.Length, at + _random.Next(1, 20));
                    bytes = [.. bytes[..at], .. bytes[end..]];
                    break;
                default:
                    bytes = _random.Next(20) == 0 ? bytes[..at] : [.. bytes[..at], bytes[at], .. bytes[at..]];
                    break;
            }
        }

        return bytes;
    }

    private string Pick(string[] from) => from[_random.Next(from.Length)];
}
