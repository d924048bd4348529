using Fluid;
using Flushback.Reports.Sheets;

namespace Flushback.Reports.Page;

/// <summary>The passes' page; it wears the bench page's style, some rules of its own and a small script. Parsed once.</summary>
internal static class SimulationTemplate
{
    private static readonly string _style = Templates.Resource("page.css") + StepsFragment.Style;
    private static readonly IFluidTemplate _template = Templates.Parse("passes.liquid");
    private static readonly TemplateOptions _options = Templates.Reading(typeof(SimulationSheet));

    /// <summary>Fills the template; every value is escaped but the steps, the style and the script, which are ours.</summary>
    public static string Render(SimulationSheet sheet, string steps)
    {
        var context = new TemplateContext(_options);
        context.SetValue("sheet", sheet);
        context.SetValue("steps", steps);
        context.SetValue("style", _style);
        context.SetValue("script", StepsFragment.Script);
        return _template.Render(context, Templates.Escaping);
    }
}
