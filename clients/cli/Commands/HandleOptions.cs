using System.CommandLine;
using Flushback.Cli.Arguments;
using Flushback.Contract.V1;

namespace Flushback.Cli.Commands;

/// <summary>The options that put the knife into its handle; any of them asks for it.</summary>
internal sealed class HandleOptions
{
    private static readonly Dictionary<string, Dimension> Varied = new(StringComparer.OrdinalIgnoreCase)
    {
        ["preload"] = Dimension.Preload,
        ["depth"] = Dimension.SpringDepth,
        ["width"] = Dimension.SpringWidth,
        ["centre-pin"] = Dimension.CentrePinForward,
    };

    private readonly Option<bool> _handle = new("--handle")
    {
        Description = "Reports the handle too: the spring bent over its pins, pull, snap and stress.",
    };

    private readonly Option<double?> _width = OfLength(
        "--width",
        "Width of the spring, such as 0.094in; 2.4 mm without it."
    );

    private readonly Option<double?> _preload = OfLength(
        "--preload",
        "How far the nose sinks over the pivot when the blade is taken out; 0.5 mm without it."
    );

    private readonly Option<double?> _rearPinShift = OfLength(
        "--rear-pin-shift",
        "The preload by how far the rear pin holds the spring up, instead of --preload."
    );

    private readonly Option<bool> _drawnFree = new("--drawn-free")
    {
        Description = "The spring is drawn unbent, its nose overlapping the tang by the preload, instead of --preload.",
    };

    private readonly Option<string?> _steel = new("--spring-steel")
    {
        HelpName = "STEEL",
        Description = "Steel of the spring, such as 1095, 5160, O1, 440C; 1095 without it.",
    };

    private readonly Option<double?> _modulus = OfNumber(
        "--spring-modulus",
        "MPA",
        "Modulus of a steel of your own, in MPa; --spring-steel is then its name."
    );

    private readonly Option<double?> _strength = OfNumber(
        "--spring-strength",
        "MPA",
        "Tensile strength of that steel as heat-treated, in MPa; estimated from the hardness without it."
    );

    private readonly Option<double?> _springHardness = OfNumber(
        "--spring-hardness",
        "HRC",
        "Hardness of the spring; 44 without it."
    );

    private readonly Option<double?> _bladeHardness = OfNumber(
        "--blade-hardness",
        "HRC",
        "Hardness of the blade; 58 without it."
    );

    private readonly Option<double?> _friction = OfNumber(
        "--friction",
        "NUMBER",
        "Coefficient of friction; 0.15 without it."
    );

    private readonly Option<double?> _nick = OfLength(
        "--nick",
        "Distance of the nail nick from the pivot; 0.6 of the way to the tip without it."
    );

    private readonly Option<double?> _stiffNose = OfLength(
        "--stiff-nose",
        "How far behind the pivot the spring is taken as stiff; as far as the tang bears on it without it."
    );

    private readonly Option<double?> _pull = ParsedOption.One<double?>(
        "--pull",
        "FORCE",
        "Looks for the preload, or what --vary says, that gives this pull at the nail nick, such as 22N or 5lbf.",
        Force.TryParse,
        Force.Complaint
    );

    private readonly Option<string?> _vary = new("--vary")
    {
        HelpName = "preload|depth|width|centre-pin",
        Description =
            "What is changed for the pull of --pull: the spring's preload, depth or width, or its centre pin.",
    };

    private readonly Option<double?> _mostStress = OfNumber(
        "--most-stress",
        "MPA",
        "Stress not to be passed with that pull; 0.75 of the tensile strength without it."
    );

    /// <summary>A fresh set.</summary>
    public HandleOptions() => _vary.AcceptOnlyFromAmong(StringComparer.OrdinalIgnoreCase, [.. Varied.Keys]);

    /// <summary>All of them, in the order of the help.</summary>
    public IEnumerable<Option> All =>
        [
            _handle,
            _width,
            _preload,
            _rearPinShift,
            _drawnFree,
            _steel,
            _modulus,
            _strength,
            _springHardness,
            _bladeHardness,
            _friction,
            _nick,
            _stiffNose,
            _pull,
            _vary,
            _mostStress,
        ];

    /// <summary>The settings of a request; null when nothing asks for the handle.</summary>
    /// <exception cref="BadInputException">
    /// The preload is given in more than one way, or a strength without the modulus of its steel.
    /// </exception>
    public HandleSettings? ToSettings(ParseResult parsed)
    {
        if (All.All(option => parsed.GetResult(option) is null or { Implicit: true }))
        {
            return null;
        }

        HandleSettings settings = new();
        ApplyPreload(parsed, settings);
        ApplySteel(parsed, settings);
        if (parsed.GetValue(_vary) is { } vary)
        {
            settings.Varied = Varied[vary];
        }

        Apply(parsed.GetValue(_width), value => settings.WidthMm = value);
        Apply(parsed.GetValue(_springHardness), value => settings.SpringHardnessHrc = value);
        Apply(parsed.GetValue(_bladeHardness), value => settings.BladeHardnessHrc = value);
        Apply(parsed.GetValue(_friction), value => settings.Friction = value);
        Apply(parsed.GetValue(_nick), value => settings.NailNickMm = value);
        Apply(parsed.GetValue(_stiffNose), value => settings.StiffNoseMm = value);
        Apply(parsed.GetValue(_pull), value => settings.WantedPullN = value);
        Apply(parsed.GetValue(_mostStress), value => settings.MostStressMpa = value);
        return settings;
    }

    private void ApplySteel(ParseResult parsed, HandleSettings settings)
    {
        string? name = parsed.GetValue(_steel);
        double? strength = parsed.GetValue(_strength);
        if (parsed.GetValue(_modulus) is { } modulus)
        {
            settings.OwnSteel = new OwnSteel { Name = name ?? "own steel", ModulusMpa = modulus };
            Apply(strength, value => settings.OwnSteel.TensileMpa = value);
        }
        else if (strength is not null)
        {
            throw new BadInputException(
                "A strength is given without the modulus of its steel; give --spring-modulus too, 206000 for most spring steels."
            );
        }
        else if (name is not null)
        {
            settings.SpringSteel = name;
        }
    }

    private void ApplyPreload(ParseResult parsed, HandleSettings settings)
    {
        double? sink = parsed.GetValue(_preload);
        double? shift = parsed.GetValue(_rearPinShift);
        bool isDrawnFree = parsed.GetValue(_drawnFree);
        if ((sink is null ? 0 : 1) + (shift is null ? 0 : 1) + (isDrawnFree ? 1 : 0) > 1)
        {
            throw new BadInputException(
                "The preload is given in more than one way; give one of --preload, --rear-pin-shift and --drawn-free."
            );
        }

        Apply(sink, value => settings.PreloadMm = value);
        Apply(shift, value => settings.RearPinShiftMm = value);
        if (isDrawnFree)
        {
            settings.DrawnFree = true;
        }
    }

    private static void Apply(double? value, Action<double> set)
    {
        if (value is { } given)
        {
            set(given);
        }
    }

    private static Option<double?> OfLength(string name, string description) =>
        ParsedOption.One<double?>(name, "LENGTH", description, Length.TryParse, Length.Complaint);

    private static Option<double?> OfNumber(string name, string helpName, string description) =>
        ParsedOption.One<double?>(name, helpName, description, Number.TryParse, Number.Complaint);
}
