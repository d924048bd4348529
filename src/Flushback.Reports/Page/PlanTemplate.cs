using Fluid;
using Flushback.Reports.Sheets;

namespace Flushback.Reports.Page;

/// <summary>A plan's page; it wears the style of the passes' page and a few rules of its own. Parsed once.</summary>
internal static class PlanTemplate
{
    private static readonly string _style =
        Templates.Resource("page.css") + StepsFragment.Style + Templates.Resource("plan.css");

    private static readonly IFluidTemplate _template = Templates.Parse("plan.liquid");

    private static readonly TemplateOptions _options = Templates.Reading(
        typeof(PlanSheet),
        typeof(StepSheet),
        typeof(PlannedStopRow),
        typeof(MeasuredFacts),
        typeof(MeasuredRow),
        typeof(ObstacleRow),
        typeof(Fact)
    );

    /// <summary>Fills the template; every value is escaped but the steps, the style and the script, which are ours.</summary>
    public static string Render(PlanSheet sheet, string steps)
    {
        var context = new TemplateContext(_options);
        context.SetValue("sheet", sheet);
        context.SetValue("steps", steps);
        context.SetValue("style", _style);
        context.SetValue("script", StepsFragment.Script);
        return _template.Render(context, Templates.Escaping);
    }
}
