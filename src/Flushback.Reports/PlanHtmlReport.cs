using Flushback.Mechanism.Plans;
using Flushback.Reports.Page;
using Flushback.Reports.Pictures;
using Flushback.Reports.Sheets;
using Flushback.Reports.Wording;

namespace Flushback.Reports;

/// <summary>A plan as one self-contained page that steps through its passes, as <see cref="SimulationHtmlReport"/> does.</summary>
public static class PlanHtmlReport
{
    /// <summary>Writes the page; the same input gives the same bytes in UTF-8.</summary>
    /// <param name="name">What the maker calls the knife; escaped, and characters that do not print are left out.</param>
    /// <param name="plan">The plan, with the findings of its steps judged.</param>
    public static string Write(string name, PlanReport plan)
    {
        PlanSheet sheet = PlanSheet.Of(name, plan, Measure.Typeset);
        return PlanTemplate.Render(
            sheet,
            StepsFragment.Render(sheet.Zeroing, sheet.Stops, StepPictures.Of(plan.Simulation, sheet.Steps))
        );
    }
}
