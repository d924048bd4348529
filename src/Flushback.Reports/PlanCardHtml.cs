using Flushback.Mechanism.Plans;
using Flushback.Reports.Card;
using Flushback.Reports.Page;
using Flushback.Reports.Pictures;

namespace Flushback.Reports;

/// <summary>A plan as one sheet for the bench: a page that prints on one sheet of A4 or of Letter.</summary>
public static class PlanCardHtml
{
    /// <summary>Writes the page; the same input gives the same bytes in UTF-8.</summary>
    /// <param name="name">What the maker calls the knife; escaped, and characters that do not print are left out.</param>
    /// <param name="plan">The plan, with the findings of its steps judged.</param>
    public static string Write(string name, PlanReport plan)
    {
        CardSheet sheet = CardSheet.Of(name, plan);
        TangPicture picture = CardLayout.Of(sheet, plan).Picture;
        return CardTemplate.Render(sheet, Svg.Write(CardSvg.Of(picture, sheet.Verdict)));
    }
}
