using Fluid;
using Flushback.Reports.Sheets;

namespace Flushback.Reports.Page;

/// <summary>The bench page's frame and style, kept in the assembly; parsed once.</summary>
internal static class PageTemplate
{
    private static readonly string _style = Templates.Resource("page.css");
    private static readonly IFluidTemplate _template = Templates.Parse("page.liquid");
    private static readonly TemplateOptions _options = Templates.Reading();

    /// <summary>Fills the template; every value is escaped but the body and the style, which are ours.</summary>
    /// <param name="name">What the maker calls the knife.</param>
    /// <param name="verdict">The verdict on it.</param>
    /// <param name="isInOrder">True when nothing needs work.</param>
    /// <param name="body">What stands between title block and cautions.</param>
    /// <param name="furtherStyle">Style that the body needs beside that of the page.</param>
    public static string Render(string name, string verdict, bool isInOrder, string body, string furtherStyle = "")
    {
        var context = new TemplateContext(_options);
        context.SetValue("name", name);
        context.SetValue("verdict", verdict);
        context.SetValue("is_in_order", isInOrder);
        context.SetValue("body", body);
        context.SetValue("cautions", Cautions.All);
        context.SetValue("style", _style + furtherStyle);
        return _template.Render(context, Templates.Escaping);
    }
}
