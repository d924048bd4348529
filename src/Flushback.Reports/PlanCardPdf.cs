using Flushback.Mechanism.Plans;
using Flushback.Reports.Card;
using Flushback.Reports.Print;

namespace Flushback.Reports;

/// <summary>A plan as one sheet for the bench, as PDF: A4, and within what fits on Letter at the same size.</summary>
public static class PlanCardPdf
{
    /// <summary>Writes the sheet; the same input gives the same bytes.</summary>
    /// <param name="name">What the maker calls the knife; characters that do not print are left out.</param>
    /// <param name="plan">The plan, with the findings of its steps judged.</param>
    public static byte[] Write(string name, PlanReport plan)
    {
        CardSheet sheet = CardSheet.Of(name, plan);
        return PdfFile.Write(
            $"{sheet.Name}: card for the bench",
            [CardPages.Of(sheet, CardLayout.Of(sheet, plan)).Sheet]
        );
    }
}
