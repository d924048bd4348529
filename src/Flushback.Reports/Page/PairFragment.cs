using System.Globalization;
using System.Xml.Linq;
using Fluid;
using Flushback.Geometry;
using Flushback.Mechanism.Bench;
using Flushback.Patterns.Pairs;
using Flushback.Reports.Pictures;
using Flushback.Reports.Sheets;
using Flushback.Reports.Wording;

namespace Flushback.Reports.Page;

/// <summary>Two blades on a page: both in the handle and where they come nearest, then each by itself.</summary>
internal static class PairFragment
{
    private static readonly IFluidTemplate _template = Templates.Parse("pair.liquid");

    private static readonly TemplateOptions _options = Templates.Reading(
        typeof(PairSheet),
        typeof(PassingRow),
        typeof(ReportSheet),
        typeof(CaptionedPicture)
    );

    /// <summary>Style of the fragment, to go with that of the page.</summary>
    public static string Style { get; } = Templates.Resource("pair.css");

    /// <summary>Fills the fragment; every value is escaped but the blades and the pictures, which are ours.</summary>
    public static string Write(
        DrawnPair pair,
        ReportSheet first,
        string firstBlade,
        ReportSheet second,
        string secondBlade
    )
    {
        var context = new TemplateContext(_options);
        context.SetValue("sheet", PairSheet.Of(pair, Measure.Typeset));
        context.SetValue("poses", Poses(pair).ToArray());
        context.SetValue("near", Near(pair).ToArray());
        context.SetValue("first", first);
        context.SetValue("first_blade", firstBlade);
        context.SetValue("second", second);
        context.SetValue("second_blade", secondBlade);
        return _template.Render(context, Templates.Escaping).TrimEnd();
    }

    private static IEnumerable<CaptionedPicture> Poses(DrawnPair pair)
    {
        (Angle firstOpen, Angle firstClosed) = Rests(pair.FirstBench);
        (Angle secondOpen, Angle secondClosed) = Rests(pair.SecondBench);
        ClearanceCase? least = NearestInPlane(pair);
        bool isClosed = least is { Kind: ClearanceKind.BothClosed };
        yield return Of(
            new PairPose(pair, firstClosed, secondClosed),
            "both-closed",
            "both closed",
            isClosed ? least : null
        );
        yield return Of(new PairPose(pair, firstOpen, secondClosed), "first-open", "first open, second closed");
        yield return Of(new PairPose(pair, firstClosed, secondOpen), "second-open", "second open, first closed");
        if (least is { } nearest && !isClosed)
        {
            yield return Of(PairPose.At(pair, nearest), "nearest", "where they come nearest", nearest);
        }
    }

    private static IEnumerable<CaptionedPicture> Near(DrawnPair pair)
    {
        if (NearestInPlane(pair) is { Overlaps: false } nearest)
        {
            yield return new CaptionedPicture(
                Svg.Write(GapPicture.Draw(PairPose.At(pair, nearest), nearest)),
                "The least distance between the blades in the plane of the drawing, close up."
            );
        }

        yield return new CaptionedPicture(
            Svg.Write(LayersPicture.Draw(pair)),
            "Across the knife: the spring above, the blades below. The outer liners are only hinted at."
        );
    }

    // Blades that pass side by side are nearest there, whatever they do in the plane.
    private static ClearanceCase? NearestInPlane(DrawnPair pair) =>
        pair.Clearance is { AreLayered: true, Least.Overlaps: true } ? null : pair.Clearance.Least;

    private static CaptionedPicture Of(PairPose pose, string id, string title, ClearanceCase? nearest = null)
    {
        XElement picture = PairPicture.Draw(pose, id, title, nearest);
        string angles = string.Create(
            CultureInfo.InvariantCulture,
            $"First blade at {Measure.Typeset.Degrees(pose.First, 1)}, second at {Measure.Typeset.Degrees(pose.Second, 1)}."
        );
        return new CaptionedPicture(Svg.Write(picture), angles);
    }

    private static (Angle Open, Angle Closed) Rests(BenchReport bench) =>
        (bench.Stops[0].RestAngle, bench.Stops[^1].RestAngle);
}
