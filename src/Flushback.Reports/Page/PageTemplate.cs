using Fluid;
using Flushback.Reports.Sheets;

namespace Flushback.Reports.Page;

/// <summary>The bench page's template and style, kept in the assembly; parsed once.</summary>
internal static class PageTemplate
{
    private static readonly string Style = Templates.Resource("page.css");
    private static readonly IFluidTemplate Template = Templates.Parse("page.liquid");
    private static readonly TemplateOptions Options = CreateOptions();

    /// <summary>Fills the template; every value is escaped but the pictures and the style, which are ours.</summary>
    public static string Render(PageContent content)
    {
        var context = new TemplateContext(Options);
        context.SetValue("sheet", content.Sheet);
        context.SetValue("stops", content.Stops);
        context.SetValue("chart", content.Chart);
        context.SetValue("narrow_chart", content.NarrowChart);
        context.SetValue("knife", content.Knife);
        context.SetValue("handle", content.Handle);
        context.SetValue("handle_charts", content.HandleCharts);
        context.SetValue("style", Style);
        return Template.Render(context, Templates.Escaping);
    }

    private static TemplateOptions CreateOptions()
    {
        TemplateOptions options = Templates.Reading();
        options.MemberAccessStrategy.Register<ReportSheet>();
        options.MemberAccessStrategy.Register<StopOnPage>();
        options.MemberAccessStrategy.Register<StopRow>();
        options.MemberAccessStrategy.Register<ContactRow>();
        options.MemberAccessStrategy.Register<FindingRow>();
        options.MemberAccessStrategy.Register<CarriedRow>();
        options.MemberAccessStrategy.Register<Fact>();
        options.MemberAccessStrategy.Register<HandleSheet>();
        options.MemberAccessStrategy.Register<HandleStopRow>();
        options.MemberAccessStrategy.Register<HandleContactRow>();
        options.MemberAccessStrategy.Register<SensitivityRow>();
        options.MemberAccessStrategy.Register<ChartOnPage>();
        return options;
    }
}
