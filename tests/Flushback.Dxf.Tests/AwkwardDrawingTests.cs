using System.Globalization;
using System.Runtime.CompilerServices;
using Flushback.Dxf.Chaining;
using Flushback.Dxf.Reading;

namespace Flushback.Dxf.Tests;

/// <summary>Damaged and awkward drawings, each with its verdict: a new case is a file and a row, no code.</summary>
/// <remarks>
/// Verdicts: <c>clean</c> (nothing to say), <c>noticed</c>, <c>repaired</c>, <c>layer refused</c> (the drawing reads, layer
/// BLADE cannot be used), <c>refused</c>. Chained at 0.01 mm.
/// </remarks>
public sealed class AwkwardDrawingTests
{
    /// <summary>One row of the table.</summary>
    public sealed record Row(
        string File,
        string Verdict,
        string Code,
        int Contours,
        int Circles,
        double? AreaMm2,
        string Words
    )
    {
        public override string ToString() => File;
    }

    public static TheoryData<string> Files => [.. Table().Select(row => row.File)];

    [Theory]
    [MemberData(nameof(Files))]
    public void An_awkward_drawing_gets_its_verdict(string file)
    {
        Row row = Table().Single(candidate => candidate.File == file);
        DxfReadResult read = DxfReader.Read(File.ReadAllBytes(Path.Combine(Folder(), file)), DxfReadOptions.Default);
        ChainResult? chained = read.Drawing is { } drawing ? DxfContours.ContoursOf(drawing, "BLADE", 0.01) : null;
        List<DxfIssue> issues = [.. read.Issues, .. chained?.Issues ?? []];

        Assert.Equal(row.Verdict, VerdictOf(read, chained));
        if (row.Code.Length > 0)
        {
            Assert.Contains(
                issues,
                issue => issue.Code == row.Code && issue.Sentence.Contains(row.Words, StringComparison.Ordinal)
            );
        }

        Assert.All(issues, issue => Assert.Matches(@"^\S.*\.$", issue.Sentence));
        Assert.Equal(row.Contours, chained?.Contours.Length ?? 0);
        Assert.Equal(row.Circles, chained?.Circles.Length ?? 0);
        if (row.AreaMm2 is { } area)
        {
            Assert.Equal(area, chained!.Contours[0].Outline.AreaMm2, 1e-6);
        }
    }

    [Fact]
    public void Every_file_has_its_row_and_every_row_its_file() =>
        Assert.Equal(
            Directory.GetFiles(Folder(), "*.dxf").Select(path => Path.GetFileName(path)).Order(StringComparer.Ordinal),
            Table().Select(row => row.File).Order(StringComparer.Ordinal)
        );

    private static string VerdictOf(DxfReadResult read, ChainResult? chained)
    {
        IEnumerable<DxfIssue> issues = [.. read.Issues, .. chained?.Issues ?? []];
        return (read.Drawing, chained) switch
        {
            (null, _) => "refused",
            (_, { HasErrors: true }) => "layer refused",
            _ when issues.Any(issue => issue.Kind == DxfIssueKind.Repair) => "repaired",
            _ when issues.Any() => "noticed",
            _ => "clean",
        };
    }

    private static IEnumerable<Row> Table() =>
        File.ReadLines(Path.Combine(Folder(), "awkward.tsv"))
            .Skip(1)
            .Select(line => line.Split('\t'))
            .Select(cells => new Row(
                cells[0],
                cells[1],
                cells[2],
                int.Parse(cells[3], CultureInfo.InvariantCulture),
                int.Parse(cells[4], CultureInfo.InvariantCulture),
                cells[5].Length > 0 ? double.Parse(cells[5], CultureInfo.InvariantCulture) : null,
                cells[6]
            ));

    private static string Folder([CallerFilePath] string thisFile = "") =>
        Path.Combine(Path.GetDirectoryName(thisFile)!, "Awkward");
}
