using System.Globalization;
using System.Text;
using Flushback.Patterns.Pairs;
using Flushback.Patterns.Parameters;

namespace Flushback.Reports.Tests.Parameters;

/// <summary>The page that explains every parameter of a pattern: a picture, and a table of its letters.</summary>
internal static class ParameterPage
{
    public static string Write(IReadOnlyList<ParameterPicture> pictures)
    {
        StringBuilder page = new(
            """
            # The dimensions of a pattern

            What a page of dimensions for `generate` may hold. The pictures are drawn from the knife with nothing changed,
            and this page from the table that the program itself goes by; a test writes both anew and compares. Keys are
            given as `group: key`; lengths are in millimetres where they have no unit (`3.2`, `3.2 mm`, `1/8 in`,
            `0.125 in`), angles in degrees. Limits are those of knives that a hand can hold and a shop can cut (common
            practice, no source).

            Two keys choose among words: `tang: half-stop` is `yes`, or `no` for a round tang; `blade: family` is
            `clip point`, `drop point`, `spear point`, `sheepsfoot`, `wharncliffe` or `pen`.

            """
        );
        foreach (ParameterPicture picture in pictures)
        {
            page.Append(
                CultureInfo.InvariantCulture,
                $"\n## {picture.Title}\n\n![{picture.Title}](parameters/{picture.Id}.svg)\n\n"
            );
            page.Append("| letter | key | without it | limits | what it is |\n| --- | --- | --- | --- | --- |\n");
            foreach ((int i, Callout callout) in picture.Callouts.Index())
            {
                foreach (string path in callout.Paths)
                {
                    page.Append(RowOf(ParameterPicture.LetterOf(i), PatternLimits.Of(path)));
                }
            }
        }

        page.Append(
            """

            ## Two blades

            `arrangement` is `one blade`, `shared spring` for a blade at either end of one spring, or `two springs` for two
            side by side. `second-blade` then has `tang`, `blade` and `readings` of its own with the keys and limits above,
            `at-other-end`, which is `yes`, or `no` for two blades on one pivot, and

            | key | without it | limits | what it is |
            | --- | --- | --- | --- |

            """
        );
        foreach (SecondBladeLimit limit in SecondBladeLimits.All)
        {
            string otherwise = limit.Default is { } value ? $"{Number(value)} mm" : limit.Follows!;
            page.Append(
                CultureInfo.InvariantCulture,
                $"| `second-blade: {KeyOf(limit.Field)}` | {otherwise} | {Number(limit.Least)} to {Number(limit.Most)} mm | {limit.Meaning} |\n"
            );
        }

        return page.ToString();
    }

    private static string KeyOf(string field) =>
        field
            .Replace("_mm", "", StringComparison.Ordinal)
            .Replace("_deg", "", StringComparison.Ordinal)
            .Replace('_', '-');

    private static string RowOf(string letter, PatternLimit limit)
    {
        string key = KeyOf(limit.Path[(limit.Group.Length + 1)..]);
        string otherwise = limit.Default is { } value ? $"{Number(value)} {limit.Unit}" : limit.Follows!;
        string limits = $"{Number(limit.Least)} to {Number(limit.Most)} {limit.Unit}";
        return $"| {letter} | `{limit.Group}: {key}` | {otherwise} | {limits} | {limit.Meaning} |\n";
    }

    private static string Number(double value) => value.ToString("0.######", CultureInfo.InvariantCulture);
}
