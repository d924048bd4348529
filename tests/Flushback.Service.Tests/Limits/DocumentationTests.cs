using System.ComponentModel.DataAnnotations;
using System.Globalization;
using System.Reflection;
using System.Runtime.CompilerServices;
using System.Text.RegularExpressions;
using Flushback.Service.Limits;

namespace Flushback.Service.Tests.Limits;

/// <summary>The limits of the code are those of the README, each with its default and with a range of its own.</summary>
public sealed partial class DocumentationTests
{
    private static PropertyInfo[] Limits =>
        typeof(ServiceLimits).GetProperties(BindingFlags.Public | BindingFlags.Instance);

    [Fact]
    public void The_table_in_the_readme_lists_every_limit_with_its_default()
    {
        ServiceLimits defaults = new();
        Dictionary<string, string> inCode = Limits.ToDictionary(
            limit => limit.Name,
            limit => string.Create(CultureInfo.InvariantCulture, $"{limit.GetValue(defaults):#,0.###}")
        );

        Dictionary<string, string> inReadme = Row()
            .Matches(File.ReadAllText(Path.Combine(Root(), "README.md")))
            .ToDictionary(row => row.Groups["name"].Value, row => row.Groups["value"].Value);

        Assert.Equal(
            inCode.OrderBy(pair => pair.Key, StringComparer.Ordinal),
            inReadme.OrderBy(pair => pair.Key, StringComparer.Ordinal)
        );
    }

    [Fact]
    public void Every_limit_has_a_range_that_holds_its_default()
    {
        ServiceLimits defaults = new();

        Assert.All(
            Limits,
            limit =>
                Assert.True(limit.GetCustomAttribute<RangeAttribute>()?.IsValid(limit.GetValue(defaults)), limit.Name)
        );
    }

    [GeneratedRegex(@"^\| `Limits:(?<name>\w+)` \| (?<value>[0-9,.]+) \|", RegexOptions.Multiline)]
    private static partial Regex Row();

    private static string Root([CallerFilePath] string here = "") =>
        Path.GetFullPath(Path.Combine(Path.GetDirectoryName(here)!, "../../.."));
}
