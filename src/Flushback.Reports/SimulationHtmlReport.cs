using Flushback.Mechanism.Passes;
using Flushback.Reports.Page;
using Flushback.Reports.Pictures;
using Flushback.Reports.Sheets;
using Flushback.Reports.Wording;

namespace Flushback.Reports;

/// <summary>
/// A simulation as one self-contained page that steps through the passes: by buttons and keys where scripts run, one
/// under another where they do not, and on paper.
/// </summary>
public static class SimulationHtmlReport
{
    /// <summary>Writes the page; the same input gives the same bytes in UTF-8.</summary>
    /// <param name="name">What the maker calls the knife; escaped, and characters that do not print are left out.</param>
    /// <param name="simulation">The simulation, with its findings judged.</param>
    public static string Write(string name, Simulation simulation)
    {
        SimulationSheet sheet = SimulationSheet.Of(name, simulation, Measure.Typeset);
        return SimulationTemplate.Render(
            sheet,
            StepsFragment.Render(sheet.Zeroing, sheet.Stops, StepPictures.Of(simulation, sheet.Steps))
        );
    }
}
