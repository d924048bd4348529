using System.Globalization;
using System.Text;
using System.Xml;
using System.Xml.Linq;
using Flushback.Cli.Regression.Running;

namespace Flushback.Cli.Regression.Telling;

/// <summary>The results in the XML form of JUnit, which servers for continuous integration read: a test case an item.</summary>
/// <remarks>A change, a new and a gone item is a failure; one that could not be checked is an error. No times: they would differ.</remarks>
internal static class JUnitXml
{
    private const string Suite = "flushback regress";

    /// <summary>Writes them; the same results give the same bytes.</summary>
    public static string Write(IReadOnlyList<ItemResult> results)
    {
        int errors = Words.Count(results, ItemOutcome.Error);
        int failures = results.Count - errors - Words.Count(results, ItemOutcome.Same);
        XAttribute[] counts =
        [
            new("name", Suite),
            new("tests", Number(results.Count)),
            new("failures", Number(failures)),
            new("errors", Number(errors)),
        ];
        XElement root = new(
            "testsuites",
            counts.Select(count => new XAttribute(count)),
            new XElement("testsuite", counts, new XAttribute("skipped", "0"), results.Select(Case))
        );
        StringBuilder text = new();
        using (
            XmlWriter writer = XmlWriter.Create(
                text,
                new XmlWriterSettings
                {
                    Indent = true,
                    NewLineChars = "\n",
                    OmitXmlDeclaration = true,
                }
            )
        )
        {
            root.Save(writer);
        }

        return $"<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n{text}\n";
    }

    private static XElement Case(ItemResult result)
    {
        XElement item = new(
            "testcase",
            new XAttribute("name", Valid(result.Path)),
            new XAttribute("classname", Valid(FolderOf(result.Path)))
        );
        string[] sentences = [.. result.Sentences.Select(Valid)];
        if (sentences.Length > 0)
        {
            item.Add(
                new XElement(
                    result.Outcome == ItemOutcome.Error ? "error" : "failure",
                    new XAttribute("type", Words.Of(result.Outcome)),
                    new XAttribute("message", sentences[0]),
                    string.Join('\n', sentences)
                )
            );
        }

        return item;
    }

    // Readers group by what stands before the last dot of it.
    private static string FolderOf(string path) =>
        path.LastIndexOf('/') is > 0 and int end ? path[..end].Replace('/', '.') : "library";

    // XML has no form for most control characters.
    private static string Valid(string text) =>
        string.Concat(text.Select(character => XmlConvert.IsXmlChar(character) ? character : ' '));

    private static string Number(int count) => count.ToString(CultureInfo.InvariantCulture);
}
