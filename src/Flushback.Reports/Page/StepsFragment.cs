using Fluid;
using Flushback.Reports.Sheets;

namespace Flushback.Reports.Page;

/// <summary>The dial after each pass, and the passes one by one: what the passes' page and a plan's have in common.</summary>
internal static class StepsFragment
{
    private static readonly IFluidTemplate _template = Templates.Parse("steps.liquid");

    private static readonly TemplateOptions _options = Templates.Reading(
        typeof(StepOnPage),
        typeof(StepSheet),
        typeof(StepStopRow),
        typeof(Fact)
    );

    /// <summary>Style of the fragment, to go with that of the page.</summary>
    public static string Style { get; } = Templates.Resource("passes.css");

    /// <summary>The script that steps through the passes.</summary>
    public static string Script { get; } = Templates.Resource("passes.js");

    /// <summary>Fills the fragment; every value is escaped but the pictures, which are ours.</summary>
    /// <param name="zeroing">What is said under the readings.</param>
    /// <param name="stops">Names of the stops whose readings are told.</param>
    /// <param name="steps">The knife before the first pass and after each.</param>
    public static string Render(string zeroing, IReadOnlyList<string> stops, IReadOnlyList<StepOnPage> steps)
    {
        var context = new TemplateContext(_options);
        context.SetValue("zeroing", zeroing);
        context.SetValue("stops", stops);
        context.SetValue("rows", steps.Select(step => step.Sheet).ToArray());
        context.SetValue("steps", steps);
        return _template.Render(context, Templates.Escaping);
    }
}

/// <summary>A step in words and pictures.</summary>
/// <param name="Sheet">The step in words.</param>
/// <param name="Whole">Tang and nose, as SVG text.</param>
/// <param name="Close">What came off, close up; null before the first pass.</param>
internal sealed record StepOnPage(StepSheet Sheet, string Whole, string? Close);
