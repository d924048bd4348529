using Fluid;
using Flushback.Reports.Sheets;

namespace Flushback.Reports.Page;

/// <summary>The passes' page; it wears the bench page's style, some rules of its own and a small script. Parsed once.</summary>
internal static class SimulationTemplate
{
    private static readonly string _style = Templates.Resource("page.css") + Templates.Resource("passes.css");
    private static readonly string _script = Templates.Resource("passes.js");
    private static readonly IFluidTemplate _template = Templates.Parse("passes.liquid");

    private static readonly TemplateOptions _options = Templates.Reading(
        typeof(SimulationSheet),
        typeof(StepOnPage),
        typeof(StepSheet),
        typeof(StepStopRow),
        typeof(Fact)
    );

    /// <summary>Fills the template; every value is escaped but the pictures, the style and the script, which are ours.</summary>
    public static string Render(SimulationSheet sheet, IReadOnlyList<StepOnPage> steps)
    {
        var context = new TemplateContext(_options);
        context.SetValue("sheet", sheet);
        context.SetValue("steps", steps);
        context.SetValue("style", _style);
        context.SetValue("script", _script);
        return _template.Render(context, Templates.Escaping);
    }
}

/// <summary>A step in words and pictures.</summary>
/// <param name="Sheet">The step in words.</param>
/// <param name="Whole">Tang and nose, as SVG text.</param>
/// <param name="Close">What came off, close up; null before the first pass.</param>
internal sealed record StepOnPage(StepSheet Sheet, string Whole, string? Close);
