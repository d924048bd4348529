using System.Globalization;
using System.Xml.Linq;
using Flushback.Cli.Regression.Baselines;
using Flushback.Cli.Regression.Running;

namespace Flushback.Cli.Regression.Telling;

/// <summary>The results as one self-contained page: what is not as before with before over now, then every item.</summary>
internal static class IndexPage
{
    private const double MmPerThou = 0.0254;

    // How much of the drawing a close-up shows about the place that is off most: so many times what it is off, and no less
    // than a corner of a tang.
    private const double TimesTheDrift = 12;
    private const double NarrowestMm = 1.5;
    private const int MostCloseUps = 3;

    /// <summary>Writes it; the same results give the same bytes.</summary>
    /// <param name="results">Every item.</param>
    /// <param name="name">What the library is called: the name of its folder.</param>
    public static string Write(IReadOnlyList<ItemResult> results, string name)
    {
        XElement page = new(
            "html",
            new XAttribute("lang", "en"),
            new XElement(
                "head",
                new XElement("meta", new XAttribute("charset", "utf-8")),
                new XElement(
                    "meta",
                    new XAttribute("name", "viewport"),
                    new XAttribute("content", "width=device-width, initial-scale=1")
                ),
                new XElement("title", $"{name}: held against its baselines"),
                new XElement("style", Style())
            ),
            new XElement(
                "body",
                new XElement("header", new XElement("p", "Library"), new XElement("h1", name), Counts(results)),
                new XElement(
                    "main",
                    results.Where(result => result.Outcome != ItemOutcome.Same).Select(Different),
                    new XElement("h2", "All of it"),
                    Table(results)
                )
            )
        );
        return $"<!DOCTYPE html>\n{Serialized(page)}\n";
    }

    private static XElement Counts(IReadOnlyList<ItemResult> results) =>
        new(
            "ul",
            new XAttribute("class", "counts"),
            Words.Outcomes.Select(outcome => new XElement(
                "li",
                new XAttribute("class", Words.Of(outcome)),
                new XElement("strong", Number(Words.Count(results, outcome))),
                $" {Words.Of(outcome)}"
            ))
        );

    private static XElement Different(ItemResult result) =>
        new(
            "section",
            new XAttribute("class", Words.Of(result.Outcome)),
            new XElement(
                "h2",
                new XElement("span", new XAttribute("class", "outcome"), Words.Of(result.Outcome)),
                $" {result.Path}"
            ),
            new XElement("ul", result.Sentences.Select(sentence => new XElement("li", sentence))),
            Pictures(result)
        );

    private static IEnumerable<XElement> Pictures(ItemResult result)
    {
        if (result.Outcome == ItemOutcome.Changed && result.Changes.Any(change => change.At is not null))
        {
            KeptOutlines before = result.Before!.Outlines;
            KeptOutlines after = result.After!.Outlines;
            yield return Figure(
                KnifeSketch.Over(before, after, $"{result.Path}, now over before"),
                "Filled: now. Dashed: as in the baseline.",
                "whole"
            );
            yield return new XElement(
                "div",
                new XAttribute("class", "close"),
                result
                    .Changes.Where(change => change.At is not null)
                    .Take(MostCloseUps)
                    .Select(change => CloseUp(before, after, change))
            );
        }
        else if ((result.After ?? result.Before) is { } kept)
        {
            yield return Figure(
                KnifeSketch.Of(kept.Outlines, result.Path),
                result.After is null ? "As in the baseline." : "As it is now.",
                "whole"
            );
        }
    }

    private static XElement CloseUp(KeptOutlines before, KeptOutlines after, Change change)
    {
        KeptPart? was = before.Parts.FirstOrDefault(part =>
            change.Name.StartsWith($"{part.Name}, ", StringComparison.Ordinal)
        );
        KeptPart? now = after.Parts.FirstOrDefault(part => part.Name == was?.Name);
        double driftMm = was is null || now is null ? 0 : OutlineDrift.Between(was, now).Mm;
        double widthMm = Math.Max(NarrowestMm, TimesTheDrift * driftMm);
        return Figure(
            KnifeSketch.CloseUp(before, after, change.At!.Value, widthMm, $"{change.Name}, close up"),
            FormattableString.Invariant($"{change.Name}: {widthMm:0.0} mm from side to side."),
            "near"
        );
    }

    private static XElement Figure(XElement picture, string caption, string kind) =>
        new("figure", new XAttribute("class", kind), picture, new XElement("figcaption", caption));

    private static XElement Table(IReadOnlyList<ItemResult> results) =>
        new(
            "table",
            new XElement(
                "thead",
                new XElement(
                    "tr",
                    (
                        (string[])["", "file", "half stop, thou", "closed, thou", "verdict", "against the baseline"]
                    ).Select(head => new XElement("th", new XAttribute("scope", "col"), head))
                )
            ),
            new XElement("tbody", results.Select(Row))
        );

    private static XElement Row(ItemResult result)
    {
        Snapshot? kept = result.After ?? result.Before;
        return new XElement(
            "tr",
            new XElement(
                "td",
                new XAttribute("class", "small"),
                kept is null ? null : KnifeSketch.Of(kept.Outlines, result.Path)
            ),
            new XElement("th", new XAttribute("scope", "row"), result.Path),
            new XElement("td", new XAttribute("class", "number"), Lift(kept, "half stop, lift")),
            new XElement("td", new XAttribute("class", "number"), Lift(kept, "closed, lift")),
            new XElement("td", Verdict(kept)),
            new XElement("td", new XAttribute("class", Words.Of(result.Outcome)), Words.Of(result.Outcome))
        );
    }

    private static string Verdict(Snapshot? kept) =>
        BladeByBlade(kept, blade => kept!.Words.FirstOrDefault(word => word.Name == $"{blade}verdict")?.Text);

    private static string Lift(Snapshot? kept, string name) =>
        BladeByBlade(
            kept,
            blade =>
                kept!.Numbers.FirstOrDefault(number => number.Name == blade + name) is { } lift
                    ? (lift.Value / MmPerThou).ToString("+0.0;-0.0;0.0", CultureInfo.InvariantCulture)
                    : null
        );

    // Of two blades both, with a dash for what only one of them has.
    private static string BladeByBlade(Snapshot? kept, Func<string, string?> said)
    {
        string?[] each = [.. (kept?.Blades ?? []).Select(said)];
        return Array.TrueForAll(each, one => one is null) ? "" : string.Join(" | ", each.Select(one => one ?? "-"));
    }

    private static string Style()
    {
        using Stream stream = typeof(IndexPage).Assembly.GetManifestResourceStream("index.css")!;
        using StreamReader reader = new(stream);
        return reader.ReadToEnd().ReplaceLineEndings("\n");
    }

    private static string Number(int count) => count.ToString("N0", CultureInfo.InvariantCulture);

    private static string Serialized(XElement page)
    {
        // In HTML an empty cell that is written as its own end stays open.
        foreach (XElement empty in page.Descendants().Where(element => element.IsEmpty && element.Name == "td"))
        {
            empty.Value = "";
        }

        return page.ToString(SaveOptions.DisableFormatting);
    }
}
