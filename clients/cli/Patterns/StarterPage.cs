using System.Globalization;
using System.Text;
using Flushback.Contract.V1;

namespace Flushback.Cli.Patterns;

/// <summary>A page of dimensions to begin with: every dimension with its meaning, limits and default.</summary>
internal static class StarterPage
{
    private const int Columns = 110;

    // On a page what a fit may change stands by itself, in the contract below the fit.
    private const string Fit = "fit";

    /// <summary>Writes the page.</summary>
    /// <param name="name">What the knife is called.</param>
    /// <param name="table">All dimensions there are, group by group, and what a page may say beside them.</param>
    public static string Write(string name, ListPatternParametersResponse table)
    {
        StringBuilder page = new();
        Comment(
            page,
            "",
            "A page of dimensions for a slip-joint knife. Change what you like and take out what you do not need: a line that is missing keeps its default, or follows from the rest where its comment says so."
        );
        Comment(
            page,
            "",
            "Lengths are written 3.2, 3.2 mm, 1/8 in or 0.125 in; without a unit they are millimetres. Angles are degrees."
        );
        page.Append('\n').Append("name: ").Append(Quoted(name)).Append('\n');
        string group = "";
        foreach (PatternParameter parameter in table.Parameters)
        {
            string[] path = parameter.Field.Split('.');
            if (path[0] != group)
            {
                group = path[0];
                page.Append('\n').Append(group).Append(":\n");
            }

            Append(page, parameter, path[1], "  ");
        }

        AppendBesidePattern(page, table.BesidePattern);
        return page.ToString();
    }

    private static void AppendBesidePattern(StringBuilder page, IEnumerable<PatternParameter> parameters)
    {
        ILookup<int, (PatternParameter Parameter, string[] Path)> byDepth = parameters
            .Select(parameter => (parameter, parameter.Field.Split('.')))
            .ToLookup(known => known.Item2.Length);
        page.Append('\n');
        foreach ((PatternParameter parameter, string[] path) in byDepth[1])
        {
            Append(page, parameter, path[0], "");
        }

        foreach (var group in byDepth[2].GroupBy(known => known.Path[0]).Where(group => group.Key != Fit))
        {
            page.Append('\n').Append(PatternKeys.Of(group.Key)).Append(":\n");
            foreach ((PatternParameter parameter, string[] path) in group)
            {
                Append(page, parameter, path[1], "  ");
            }

            string[] groups = [.. byDepth[3].Where(known => known.Path[0] == group.Key).Select(known => known.Path[1])];
            Comment(
                page,
                "  ",
                $"Its own {string.Join(", ", groups.Distinct())}: each a group below this one, with the dimensions, limits and defaults that it has above."
            );
        }

        foreach ((PatternParameter free, _) in byDepth[2].Where(known => known.Path[0] == Fit))
        {
            page.Append('\n');
            Comment(page, "", $"{free.Meaning} Left out: {free.Follows}.");
            page.Append("# free: [spring.preload, pins.centre-behind]\n");
        }
    }

    private static void Append(StringBuilder page, PatternParameter parameter, string field, string indent)
    {
        Comment(page, indent, Told(parameter));
        string line = $"{PatternKeys.Of(field)}: {ValueOf(parameter)}".TrimEnd();
        page.Append(indent).Append(parameter.Follows.Length > 0 ? "# " : "").Append(line).Append('\n');
    }

    private static string Told(PatternParameter parameter)
    {
        if (parameter.Choices.Count > 0)
        {
            return $"{parameter.Meaning} One of {string.Join(", ", parameter.Choices)}.";
        }

        string limits = $"{Number(parameter.Least)} to {Number(parameter.Most)} {parameter.Unit}.";
        return parameter.Follows.Length > 0
            ? $"{parameter.Meaning} {limits} Left out: {parameter.Follows}."
            : $"{parameter.Meaning} {limits}";
    }

    private static string ValueOf(PatternParameter parameter) =>
        parameter.Choices.Count > 0 ? parameter.Choices[0]
        : parameter.HasDefaultValue ? $"{Number(parameter.DefaultValue)} {parameter.Unit}"
        : "";

    private static void Comment(StringBuilder page, string indent, string text)
    {
        string line = $"{indent}#";
        foreach (string word in text.Split(' '))
        {
            if (line.Length + 1 + word.Length > Columns)
            {
                page.Append(line).Append('\n');
                line = $"{indent}#";
            }

            line += $" {word}";
        }

        page.Append(line).Append('\n');
    }

    // Single quotes keep every character but themselves.
    private static string Quoted(string name) => $"'{name.Replace("'", "''", StringComparison.Ordinal)}'";

    private static string Number(double value) => value.ToString("0.######", CultureInfo.InvariantCulture);
}
