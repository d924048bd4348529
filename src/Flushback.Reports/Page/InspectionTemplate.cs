using Fluid;
using Flushback.Reports.Sheets;

namespace Flushback.Reports.Page;

/// <summary>The inspection page's template; it wears the bench page's style and a few rules of its own. Parsed once.</summary>
internal static class InspectionTemplate
{
    private static readonly string _style = Templates.Resource("page.css") + Templates.Resource("inspection.css");
    private static readonly IFluidTemplate _template = Templates.Parse("inspection.liquid");

    private static readonly TemplateOptions _options = Templates.Reading(
        typeof(InspectionSheet),
        typeof(PartRow),
        typeof(NarrowRow),
        typeof(HoleRow),
        typeof(InspectionFindingRow),
        typeof(Fact)
    );

    /// <summary>Fills the template; every value is escaped but the pictures and the style, which are ours.</summary>
    /// <param name="sheet">The inspection in words.</param>
    /// <param name="wide">The picture for a desk; null for none.</param>
    /// <param name="narrow">The picture for a phone; null for none.</param>
    public static string Render(InspectionSheet sheet, string? wide, string? narrow)
    {
        var context = new TemplateContext(_options);
        context.SetValue("sheet", sheet);
        context.SetValue("wide", wide);
        context.SetValue("narrow", narrow);
        context.SetValue("style", _style);
        return _template.Render(context, Templates.Escaping);
    }
}
