using System.CommandLine;
using Flushback.Cli.Arguments;
using Flushback.Contract.V1;

namespace Flushback.Cli.Commands;

/// <summary>The options that say what varies, how, and how many parts are drawn.</summary>
internal sealed class ToleranceOptions
{
    private static readonly Dictionary<string, SpreadKind> _kinds = new(StringComparer.OrdinalIgnoreCase)
    {
        ["uniform"] = SpreadKind.Uniform,
        ["normal"] = SpreadKind.Normal,
    };

    private readonly Option<double?> _pins = OfLength(
        "--pins",
        "How far off every hole and pin may lie either way, forward and up each."
    );

    private readonly Option<double?> _clearance = OfLength(
        "--clearance",
        "Largest play of blade and spring on their pins, on the diameter; parts have between none and this."
    );

    private readonly Option<double?> _profile = OfLength(
        "--profile",
        "How far out or in every face may lie, anywhere along it."
    );

    private readonly Option<List<FaceProfile>> _faces = ParsedOption.Many<FaceProfile>(
        "--face-profile",
        "FACE=LENGTH",
        "The same for one face, such as half-stop-face=0.01mm; may be repeated.",
        FaceProfileText.TryParse,
        FaceProfileText.Complaint
    );

    private readonly Option<double?> _depth = OfLength(
        "--depth-off",
        "How far off the spring's depth may be; in the handle."
    );
    private readonly Option<double?> _width = OfLength(
        "--width-off",
        "How far off the spring's width may be; in the handle."
    );
    private readonly Option<double?> _preload = OfLength(
        "--preload-off",
        "How far off the preload may be; in the handle."
    );

    private readonly Option<string?> _kind = new("--distribution")
    {
        HelpName = "uniform|normal",
        Description =
            "How dimensions lie between their limits: anywhere, or normally with the limits at three standard deviations; anywhere without it.",
    };

    private readonly Option<int?> _parts = new("--parts")
    {
        HelpName = "N",
        Description = "How many parts are drawn and solved; 10000 without it.",
    };

    private readonly Option<ulong?> _seed = new("--seed")
    {
        HelpName = "S",
        Description = "Which parts are drawn: the same number draws the same ones; 1 without it.",
    };

    private readonly Option<double?> _want = ParsedOption.One<double?>(
        "--want",
        "SHARE",
        "Ends with code 1 when fewer parts than this read within their targets, such as 95%.",
        Percent.TryParse,
        Percent.Complaint
    );

    /// <summary>A fresh set.</summary>
    public ToleranceOptions() => _kind.AcceptOnlyFromAmong(StringComparer.OrdinalIgnoreCase, [.. _kinds.Keys]);

    /// <summary>All of them, in the order of the help.</summary>
    public IEnumerable<Option> All =>
        [_pins, _clearance, _profile, _faces, _depth, _width, _preload, _kind, _parts, _seed, _want];

    /// <summary>What the command line says of tolerances and parts.</summary>
    /// <exception cref="BadInputException">Nothing may vary.</exception>
    public void Apply(ParseResult parsed, StudyRequest request)
    {
        Tolerances tolerances = new()
        {
            PinsMm = parsed.GetValue(_pins) ?? 0,
            ClearanceMm = parsed.GetValue(_clearance) ?? 0,
            ProfileMm = parsed.GetValue(_profile) ?? 0,
            DepthMm = parsed.GetValue(_depth) ?? 0,
            WidthMm = parsed.GetValue(_width) ?? 0,
            PreloadMm = parsed.GetValue(_preload) ?? 0,
        };
        tolerances.Faces.AddRange(parsed.GetValue(_faces) ?? []);
        if (tolerances.Equals(new Tolerances()))
        {
            throw new BadInputException(
                "No tolerance is given; say what may vary, such as --pins 0.02mm --profile 0.03mm."
            );
        }

        request.Tolerances = tolerances;
        request.Spread = parsed.GetValue(_kind) is { } kind ? _kinds[kind] : SpreadKind.Unspecified;
        if (parsed.GetValue(_parts) is { } parts)
        {
            request.Parts = parts;
        }

        if (parsed.GetValue(_seed) is { } seed)
        {
            request.Seed = seed;
        }
    }

    /// <summary>True when something varies that only the handle knows.</summary>
    public bool NeedsHandle(ParseResult parsed) =>
        (parsed.GetValue(_depth) ?? 0) > 0
        || (parsed.GetValue(_width) ?? 0) > 0
        || (parsed.GetValue(_preload) ?? 0) > 0;

    /// <summary>How the command ends with a share of the parts within their targets.</summary>
    public ExitCode EndOf(ParseResult parsed, CountedShare within) =>
        within.Share >= (parsed.GetValue(_want) ?? 0) ? ExitCode.Clean : ExitCode.Findings;

    private static Option<double?> OfLength(string name, string description) =>
        ParsedOption.One<double?>(name, "LENGTH", description, Length.TryParse, Length.Complaint);
}
