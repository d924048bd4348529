using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using Flushback.Cli.Regression.Baselines;
using Flushback.Cli.Regression.Running;

namespace Flushback.Cli.Regression.Telling;

/// <summary>The results as JSON for other programs.</summary>
internal static class ResultsJson
{
    private static readonly JsonWriterOptions _form = new()
    {
        Indented = true,
        NewLine = "\n",
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    /// <summary>Writes them; the same results give the same bytes.</summary>
    public static string Write(IReadOnlyList<ItemResult> results)
    {
        using MemoryStream bytes = new();
        using (Utf8JsonWriter json = new(bytes, _form))
        {
            json.WriteStartObject();
            json.WriteStartObject("counts");
            foreach (ItemOutcome outcome in Words.Outcomes)
            {
                json.WriteNumber(Words.Of(outcome), Words.Count(results, outcome));
            }

            json.WriteNumber("all", results.Count);
            json.WriteEndObject();
            json.WriteStartArray("items");
            foreach (ItemResult result in results)
            {
                Write(json, result);
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(bytes.ToArray()) + "\n";
    }

    private static void Write(Utf8JsonWriter json, ItemResult result)
    {
        json.WriteStartObject();
        json.WriteString("file", result.Path);
        json.WriteString("outcome", Words.Of(result.Outcome));
        if (result.Changes.Count > 0)
        {
            json.WriteStartArray("changes");
            foreach (Change change in result.Changes)
            {
                json.WriteStartObject();
                json.WriteString("of", change.Name);
                json.WriteString("was", change.Was);
                json.WriteString("is", change.Is);
                json.WriteString("sentence", change.Sentence);
                json.WriteEndObject();
            }

            json.WriteEndArray();
        }

        if (result.Errors.Count > 0)
        {
            json.WriteStartArray("errors");
            foreach (string error in result.Errors)
            {
                json.WriteStringValue(error);
            }

            json.WriteEndArray();
        }

        json.WriteEndObject();
    }
}
