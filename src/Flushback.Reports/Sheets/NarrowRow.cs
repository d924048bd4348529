using System.Globalization;
using Flushback.Inspection;
using Flushback.Reports.Wording;

namespace Flushback.Reports.Sheets;

/// <summary>The narrowest place of one kind in a part: its web, its inner corner, its stock.</summary>
internal sealed record NarrowRow(string Part, string What, string Mm, string Thou, string Where)
{
    /// <summary>What was measured of a part.</summary>
    public static IEnumerable<NarrowRow> Of(InspectedPart part, int number, Measure measure)
    {
        string name = number.ToString(CultureInfo.InvariantCulture);
        if (part.ThinnestWeb is { } web)
        {
            string across = $"{measure.Place(web.From)} to {measure.Place(web.To)}";
            yield return Row("thinnest web", web.ThicknessMm, across);
        }

        if (part.LeastInnerRadius is { } inner)
        {
            string what = inner.RadiusMm > 0 ? "least inner radius" : "sharp inner corner";
            yield return Row(what, inner.RadiusMm, measure.Place(inner.At));
        }

        if (part.LeastStock is { } stock)
        {
            yield return Row("least stock", stock.LeastMm, measure.Place(stock.At));
        }

        NarrowRow Row(string what, double mm, string where) => new(name, what, measure.Mm(mm), measure.Thou(mm), where);
    }
}
