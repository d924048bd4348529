using System.Text;
using Flushback.Dxf.Chaining;
using Flushback.Dxf.Reading;

namespace Flushback.Dxf.Tests;

/// <summary>Every bad file gets a sentence that says what is wrong, where, and what to do.</summary>
public sealed class BadInputTests
{
    public static TheoryData<string, string, string> FilesThatAreRefused =>
        new()
        {
            { "", DxfIssueCodes.Empty, "empty" },
            { "  \r\n \0", DxfIssueCodes.Empty, "empty" },
            { "%PDF-1.7 ...", DxfIssueCodes.NotDxf, "PDF" },
            { "AC1027\0\0\0\0\0", DxfIssueCodes.NotDxf, "DWG" },
            { "<svg xmlns='http://www.w3.org/2000/svg'/>", DxfIssueCodes.NotDxf, "SVG" },
            { "Dear maker,\nplease find the knife\n", DxfIssueCodes.NotDxf, "'Dear maker,'" },
            { "1\n2\n3\n4\n", DxfIssueCodes.NotDxf, "group 0 SECTION" },
            {
                Drawn.Section("HEADER", Drawn.InMillimetres) + "0\nEOF\n",
                DxfIssueCodes.Structure,
                "no ENTITIES section"
            },
            {
                "0\nSECTION\n2\nENTITIES\n" + Drawn.Line(0, 0, 1, 1),
                DxfIssueCodes.Truncated,
                "inside section ENTITIES"
            },
            {
                "0\nSECTION\n2\nENTITIES\n" + Drawn.Line(0, 0, 1, 1) + "0\nEOF\n",
                DxfIssueCodes.Structure,
                "comes before its ENDSEC"
            },
            { "0\nSECTION\n", DxfIssueCodes.Truncated, "cut short" },
            { Drawn.File(Drawn.Line(0, 0, 1, 1) + "stray\n"), DxfIssueCodes.Structure, "holds 'stray'" },
            {
                Drawn.File(Drawn.Line(double.NaN, 0, 1, 1, handle: "2F")),
                DxfIssueCodes.Number,
                "LINE 2F on layer BLADE (line 15): group 10 at line 22"
            },
            { Drawn.File(Drawn.Line(double.PositiveInfinity, 0, 1, 1)), DxfIssueCodes.Number, "group 10" },
            {
                Drawn.File(Drawn.Line(0, 0, 1, 1).Replace("11\n1\n", "11\n1,5\n", StringComparison.Ordinal)),
                DxfIssueCodes.Number,
                "decimals need a point"
            },
            {
                Drawn.File(Drawn.Circle(0, 0, 40), header: ""),
                DxfIssueCodes.UnitMissing,
                "80 x 80 mm (3.15 x 3.15 in) large if drawn in millimetres and 2032 x 2032 mm (80 x 80 in) if drawn in inches"
            },
            {
                Drawn.File(Drawn.Circle(0, 0, 40), header: "9\n$INSUNITS\n70\n77\n"),
                DxfIssueCodes.UnitMissing,
                "$INSUNITS is 77"
            },
        };

    public static TheoryData<string, string, string> EntitiesThatSpoilTheirLayer =>
        new()
        {
            {
                Drawn.Arc(0, 0, 0, 0, 90, handle: "2F"),
                DxfIssueCodes.EntityInvalid,
                "ARC 2F on layer BLADE (line 15) has a radius of 0"
            },
            { Drawn.Circle(0, 0, -3), DxfIssueCodes.EntityInvalid, "radius of -3" },
            { Drawn.Arc(0, 0, 1, 90, 90), DxfIssueCodes.EntityInvalid, "same angle" },
            {
                Drawn.Polyline(true, "BLADE", (0, 0, 0), (5, 0, 0.5), (5, 0, 0), (0, 5, 0)),
                DxfIssueCodes.EntityInvalid,
                "bulge of 0.5 between two equal vertices at (5, 0) mm"
            },
            { Drawn.Polyline(true, "BLADE", (0, 0, 0)), DxfIssueCodes.EntityInvalid, "fewer than two vertices" },
            { Drawn.Polyline(true, "BLADE", (0, 0, 0), (5, 5, 0)), DxfIssueCodes.EntityInvalid, "encloses nothing" },
            {
                Drawn.Entity("LINE", "BLADE", "7") + Drawn.Groups((10, 0), (20, 0)),
                DxfIssueCodes.EntityInvalid,
                "LINE 7 on layer BLADE (line 15) lacks an end point"
            },
            {
                Drawn.Entity("CIRCLE", "BLADE") + Drawn.Groups((10, 0), (20, 0)),
                DxfIssueCodes.EntityInvalid,
                "lacks its centre or radius"
            },
            { Drawn.Line(1e9, 0, 1e9, 5), DxfIssueCodes.CoordinateRange, "check the unit" },
            {
                Drawn.Line(0, 0, 5, 5) + Drawn.Groups((30, 0), (31, 1)),
                DxfIssueCodes.EntityNotFlat,
                "different heights"
            },
            {
                Drawn.Circle(0, 0, 5) + Drawn.Groups((210, 0), (220, 0.6), (230, 0.8)),
                DxfIssueCodes.EntityNotFlat,
                "tilted plane"
            },
            { Drawn.Entity("3DSOLID", "BLADE"), DxfIssueCodes.EntityUnreadable, "is a solid body: draw its outline" },
        };

    [Theory]
    [MemberData(nameof(FilesThatAreRefused))]
    public void A_file_that_cannot_be_understood_gets_one_sentence(string file, string code, string words)
    {
        DxfReadResult result = Drawn.Read(file);
        Assert.Null(result.Drawing);
        DxfIssue error = Assert.Single(result.Issues, issue => issue.IsFatal);
        Assert.Equal(code, error.Code);
        AssertIsSentence(error.Sentence, words);
    }

    [Theory]
    [MemberData(nameof(EntitiesThatSpoilTheirLayer))]
    public void An_entity_without_usable_geometry_is_an_error_where_its_layer_is_used(
        string entity,
        string code,
        string words
    )
    {
        DxfReadResult result = Drawn.Read(Drawn.File(entity + Drawn.Circle(0, 0, 1, "PINS")));
        Assert.Contains(result.Issues, issue => issue.Kind == DxfIssueKind.Notice && issue.Code == code);

        DxfIssue error = Assert.Single(DxfContours.ContoursOf(result.Drawing!, "BLADE", 0.01).Issues);
        Assert.Equal((code, DxfIssueKind.Error), (error.Code, error.Kind));
        AssertIsSentence(error.Sentence, words);
        Assert.Empty(DxfContours.ContoursOf(result.Drawing!, "PINS", 0.01).Issues);
    }

    [Fact]
    public void Text_in_utf_16_is_named() =>
        Assert.Contains(
            "UTF-16",
            Assert.Single(ReadBytes([0xFF, 0xFE, .. Encoding.Unicode.GetBytes(Drawn.File(""))]).Issues).Sentence,
            StringComparison.Ordinal
        );

    [Fact]
    public void A_file_over_the_limit_is_refused_before_it_is_read()
    {
        DxfIssue issue = Assert.Single(ReadBytes(new byte[DxfLimits.Default.MaxBytes + 1]).Issues);
        Assert.Equal((DxfIssueCodes.TooLarge, DxfIssueKind.LimitExceeded), (issue.Code, issue.Kind));
    }

    [Fact]
    public void More_entities_or_vertices_than_allowed_are_refused()
    {
        byte[] file = Encoding.UTF8.GetBytes(Drawn.File(string.Concat(Enumerable.Repeat(Drawn.Line(0, 0, 1, 1), 11))));
        foreach (
            DxfLimits limits in new[]
            {
                new DxfLimits { MaxEntities = 10 },
                new DxfLimits { MaxVertices = 10 },
            }
        )
        {
            DxfReadResult result = DxfReader.Read(file, new DxfReadOptions { Limits = limits });
            Assert.Null(result.Drawing);
            Assert.Equal(DxfIssueKind.LimitExceeded, Assert.Single(result.Issues).Kind);
        }
    }

    [Fact]
    public void A_missing_end_mark_and_bytes_after_it_are_noticed_and_read_over()
    {
        string whole = Drawn.File(Drawn.Circle(0, 0, 1));
        foreach (
            string file in new[] { whole.Replace("0\nEOF\n", "", StringComparison.Ordinal), whole + "something else" }
        )
        {
            DxfReadResult result = Drawn.Read(file);
            Assert.NotNull(result.Drawing);
            Assert.Equal(
                (DxfIssueCodes.EndOfFile, DxfIssueKind.Notice),
                (result.Issues[0].Code, result.Issues[0].Kind)
            );
        }
    }

    [Fact]
    public void Cancelling_stops_the_reading()
    {
        using CancellationTokenSource cancelled = new();
        cancelled.Cancel();
        Assert.Throws<OperationCanceledException>(() =>
            DxfReader.Read(Encoding.UTF8.GetBytes(Drawn.File("")), DxfReadOptions.Default, cancelled.Token)
        );
    }

    [Fact]
    public void A_file_cut_anywhere_is_refused_with_a_sentence_or_read_whole()
    {
        byte[] whole = Encoding.UTF8.GetBytes(Drawn.File(Drawn.Line(0, 0, 1, 1) + Drawn.Arc(0, 0, 2, 10, 50)));
        for (int length = 0; length < whole.Length; length++)
        {
            DxfReadResult result = ReadBytes(whole[..length]);
            if (result.Drawing is { } drawing)
            {
                Assert.Equal(2, drawing.Shapes.Length);
            }
            else
            {
                Assert.All(result.Issues, issue => AssertIsSentence(issue.Sentence, ""));
            }
        }
    }

    private static DxfReadResult ReadBytes(byte[] bytes) => DxfReader.Read(bytes, DxfReadOptions.Default);

    private static void AssertIsSentence(string sentence, string words)
    {
        Assert.Contains(words, sentence, StringComparison.Ordinal);
        Assert.EndsWith(".", sentence, StringComparison.Ordinal);
        Assert.DoesNotContain('\n', sentence);
        Assert.DoesNotContain("Exception", sentence, StringComparison.Ordinal);
    }
}
