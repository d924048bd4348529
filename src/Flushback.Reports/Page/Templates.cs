using System.Text.Encodings.Web;
using System.Text.Unicode;
using Fluid;

namespace Flushback.Reports.Page;

/// <summary>What every page's template has in common.</summary>
internal static class Templates
{
    /// <summary>Escapes every value that is not marked as ours.</summary>
    public static HtmlEncoder Escaping { get; } = HtmlEncoder.Create(UnicodeRanges.All);

    /// <summary>A template that is kept in the assembly.</summary>
    public static IFluidTemplate Parse(string name) => new FluidParser().Parse(Resource(name));

    /// <summary>Options under which a template reads the members of these types and nothing else.</summary>
    public static TemplateOptions Reading(params ReadOnlySpan<Type> types)
    {
        // A name the template misspells must fail the tests, not leave a gap on the page.
        var options = new TemplateOptions
        {
            StrictFilters = true,
            Undefined = name =>
                throw new InvalidOperationException($"The page asks for {name}, which it is not given."),
        };
        foreach (Type type in types)
        {
            options.MemberAccessStrategy.Register(type);
        }

        return options;
    }

    /// <summary>A text that is kept in the assembly.</summary>
    public static string Resource(string name)
    {
        using Stream stream =
            typeof(Templates).Assembly.GetManifestResourceStream(name)
            ?? throw new InvalidOperationException($"The assembly lacks its resource {name}.");
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd().ReplaceLineEndings("\n");
    }
}
