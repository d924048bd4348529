using System.Text.Encodings.Web;
using System.Text.Unicode;
using Fluid;
using Flushback.Reports.Sheets;

namespace Flushback.Reports.Page;

/// <summary>The page's template and style, kept in the assembly; parsed once.</summary>
internal static class PageTemplate
{
    private static readonly HtmlEncoder Escaping = HtmlEncoder.Create(UnicodeRanges.All);
    private static readonly string Style = Resource("page.css");
    private static readonly IFluidTemplate Template = new FluidParser().Parse(Resource("page.liquid"));
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
        return Template.Render(context, Escaping);
    }

    private static TemplateOptions CreateOptions()
    {
        // A name the template misspells must fail the tests, not leave a gap on the page.
        var options = new TemplateOptions
        {
            StrictFilters = true,
            Undefined = name =>
                throw new InvalidOperationException($"The page asks for {name}, which it is not given."),
        };
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

    private static string Resource(string name)
    {
        using Stream stream =
            typeof(PageTemplate).Assembly.GetManifestResourceStream(name)
            ?? throw new InvalidOperationException($"The assembly lacks its resource {name}.");
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd().ReplaceLineEndings("\n");
    }
}
