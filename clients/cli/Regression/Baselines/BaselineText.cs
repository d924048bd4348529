using System.Globalization;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace Flushback.Cli.Regression.Baselines;

/// <summary>A snapshot as JSON that a person can read, compare and change: a line a fact, the same bytes every time.</summary>
internal static class BaselineText
{
    private const int Form = 1;

    private const string NoLift = "-";

    private static readonly string _atDeg = Invariant(
        $"{KeptCurve.Angles[0]} to {KeptCurve.Angles[^1]} by {KeptCurve.Angles[1] - KeptCurve.Angles[0]}"
    );

    private static readonly JsonSerializerOptions _plain = new()
    {
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    /// <summary>Writes it.</summary>
    public static string Write(Snapshot kept)
    {
        StringBuilder text = new();
        text.Append(Invariant($"{{\n  \"baseline\": {Form},\n  \"words\": {{\n"));
        text.AppendJoin(",\n", kept.Words.Select(word => $"    {Quoted(word.Name)}: {Quoted(word.Text)}"));
        text.Append("\n  },\n  \"numbers\": {\n");
        text.AppendJoin(",\n", kept.Numbers.Select(number => $"    {Quoted(number.Name)}: {Line(number)}"));
        text.Append("\n  },\n  \"curves\": {\n");
        text.AppendJoin(",\n", kept.Curves.Select(curve => $"    {Quoted(curve.Name)}: {Line(curve)}"));
        text.Append(Invariant($"\n  }},\n  \"outlines\": {{\n    \"within_mm\": {kept.Outlines.WithinMm},\n"));
        text.AppendJoin(
            ",\n",
            [
                .. kept.Outlines.Parts.Select(part => $"    {Quoted(part.Name)}: {Quoted(Corners(part))}"),
                .. kept.Outlines.Pins.Select(pin =>
                    $"    {Quoted(pin.Name)}: {Quoted(Invariant($"{pin.X} {pin.Y} {pin.Diameter}"))}"
                ),
            ]
        );
        return text.Append("\n  }\n}\n").ToString();
    }

    /// <summary>Reads what <see cref="Write"/> wrote, perhaps changed by hand.</summary>
    /// <exception cref="FormatException">It is no baseline of this form: what is wrong, without a full stop.</exception>
    public static Snapshot Read(string text)
    {
        try
        {
            JsonNode root = JsonNode.Parse(text) ?? throw new FormatException("it is empty");
            if (root["baseline"]?.GetValue<int>() != Form)
            {
                throw new FormatException(Invariant($"it does not say \"baseline\": {Form}"));
            }

            JsonObject outlines = root["outlines"]!.AsObject();
            return new Snapshot(
                [.. root["words"]!.AsObject().Select(word => new KeptWord(word.Key, word.Value!.GetValue<string>()))],
                [.. root["numbers"]!.AsObject().Select(number => Number(number.Key, number.Value!))],
                [.. (root["curves"]?.AsObject() ?? []).Select(curve => Curve(curve.Key, curve.Value!))],
                new KeptOutlines(
                    outlines["within_mm"]!.GetValue<double>(),
                    [.. Drawn(outlines, isPin: false).Select(part => Part(part.Key, part.Value!.GetValue<string>()))],
                    [.. Drawn(outlines, isPin: true).Select(pin => Pin(pin.Key, pin.Value!.GetValue<string>()))]
                )
            );
        }
        catch (Exception fault)
            when (fault
                    is JsonException
                        or InvalidOperationException
                        or NullReferenceException
                        or IndexOutOfRangeException
            )
        {
            throw new FormatException(
                fault is JsonException ? "it cannot be read as JSON" : "something is missing or of another kind",
                fault
            );
        }
    }

    private static string Line(KeptNumber number) =>
        Invariant($"{{ \"is\": {number.Value}, \"unit\": {Quoted(number.Unit)}, \"within\": {number.Within} }}");

    private static string Line(KeptCurve curve) =>
        Invariant(
            $"{{ \"unit\": \"mm\", \"within\": {curve.WithinMm}, \"at_deg\": {Quoted(_atDeg)}, \"is\": {Quoted(Lifts(curve))} }}"
        );

    private static string Lifts(KeptCurve curve) =>
        string.Join(' ', curve.LiftsMm.Select(lift => lift is { } mm ? Invariant($"{mm}") : NoLift));

    private static string Corners(KeptPart part) =>
        string.Join(
            ", ",
            part.Vertices.Select(at =>
                at.Bulge == 0 ? Invariant($"{at.X} {at.Y}") : Invariant($"{at.X} {at.Y} {at.Bulge}")
            )
        );

    private static KeptNumber Number(string name, JsonNode line) =>
        new(name, line["is"]!.GetValue<double>(), line["unit"]!.GetValue<string>(), line["within"]!.GetValue<double>());

    private static KeptCurve Curve(string name, JsonNode line)
    {
        string[] lifts = line["is"]!.GetValue<string>().Split(' ');
        if (lifts.Length != KeptCurve.Angles.Count || line["at_deg"]!.GetValue<string>() != _atDeg)
        {
            throw new FormatException(Invariant($"'{name}' has other angles than {_atDeg}"));
        }

        return new KeptCurve(
            name,
            [
                .. lifts.Select(lift =>
                    lift == NoLift ? (double?)null : double.Parse(lift, CultureInfo.InvariantCulture)
                ),
            ],
            line["within"]!.GetValue<double>()
        );
    }

    private static IEnumerable<KeyValuePair<string, JsonNode?>> Drawn(JsonObject outlines, bool isPin) =>
        outlines.Where(drawn =>
            drawn.Key != "within_mm"
            && (
                drawn.Key.EndsWith("pin", StringComparison.Ordinal)
                || drawn.Key.EndsWith("pivot", StringComparison.Ordinal)
            ) == isPin
        );

    private static KeptPart Part(string name, string corners) =>
        new(
            name,
            [
                .. corners
                    .Split(", ")
                    .Select(Numbers)
                    .Select(at => new KeptVertex(at[0], at[1], at.Length > 2 ? at[2] : 0)),
            ]
        );

    private static KeptPin Pin(string name, string text)
    {
        double[] at = Numbers(text);
        return new KeptPin(name, at[0], at[1], at[2]);
    }

    private static double[] Numbers(string text) =>
        [.. text.Split(' ').Select(number => double.Parse(number, CultureInfo.InvariantCulture))];

    private static string Quoted(string text) => JsonSerializer.Serialize(text, _plain);

    private static string Invariant(FormattableString text) => FormattableString.Invariant(text);
}
