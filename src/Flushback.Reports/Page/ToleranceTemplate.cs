using Fluid;
using Flushback.Reports.Sheets;

namespace Flushback.Reports.Page;

/// <summary>The page of a tolerance study; it wears the bench page's style and some rules of its own. Parsed once.</summary>
internal static class ToleranceTemplate
{
    private static readonly string _style = Templates.Resource("page.css") + Templates.Resource("tolerance.css");
    private static readonly IFluidTemplate _template = Templates.Parse("tolerance.liquid");

    private static readonly TemplateOptions _options = Templates.Reading(
        typeof(ToleranceSheet),
        typeof(SpreadRow),
        typeof(TighteningRow),
        typeof(SlopeRow),
        typeof(PictureOnPage),
        typeof(Fact)
    );

    /// <summary>Fills the template; every value is escaped but the pictures and the style, which are ours.</summary>
    public static string Render(ToleranceSheet sheet, IReadOnlyList<PictureOnPage> pictures)
    {
        var context = new TemplateContext(_options);
        context.SetValue("sheet", sheet);
        context.SetValue("pictures", pictures);
        context.SetValue("style", _style);
        return _template.Render(context, Templates.Escaping);
    }
}

/// <summary>A picture with its caption.</summary>
/// <param name="Caption">What it shows.</param>
/// <param name="Picture">As SVG text.</param>
internal sealed record PictureOnPage(string Caption, string Picture);
