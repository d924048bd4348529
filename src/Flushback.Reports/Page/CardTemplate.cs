using Fluid;
using Flushback.Reports.Card;

namespace Flushback.Reports.Page;

/// <summary>The card's template and style. Parsed once.</summary>
internal static class CardTemplate
{
    private static readonly string _style = Templates.Resource("card.css");
    private static readonly IFluidTemplate _template = Templates.Parse("card.liquid");

    private static readonly TemplateOptions _options = Templates.Reading(
        typeof(CardSheet),
        typeof(CardRow),
        typeof(CardReading)
    );

    /// <summary>Fills the template; every value is escaped but the picture and the style, which are ours.</summary>
    public static string Render(CardSheet sheet, string picture)
    {
        var context = new TemplateContext(_options);
        context.SetValue("sheet", sheet);
        context.SetValue("picture", picture);
        context.SetValue("style", _style);
        return _template.Render(context, Templates.Escaping);
    }
}
