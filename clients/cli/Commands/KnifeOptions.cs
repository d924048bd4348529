using System.CommandLine;
using Flushback.Cli.Arguments;
using Flushback.Contract.V1;
using Google.Protobuf;

namespace Flushback.Cli.Commands;

/// <summary>The options that say how to read the drawing.</summary>
internal sealed class KnifeOptions
{
    private readonly Option<LengthUnit> _unit = ParsedOption.One<LengthUnit>(
        "--unit",
        "mm|cm|m|in|thou",
        "Unit of the drawing, over whatever the file says.",
        UnitName.TryParse,
        UnitName.Complaint
    );

    private readonly Option<string> _bladeLayer = Layer("--blade-layer", "the blade's outline and its pivot", "BLADE");
    private readonly Option<string> _springLayer = Layer(
        "--spring-layer",
        "the spring's outline and its pins",
        "SPRING"
    );
    private readonly Option<string> _handleLayer = Layer("--handle-layer", "the handle's outline, if any", "HANDLE");
    private readonly Option<string> _pinsLayer = Layer("--pins-layer", "pins not on the layer of their part", "PINS");

    private readonly Option<double?> _bladeAngle = Degrees(
        "--blade-angle",
        "Blade angle as drawn: 0 open, 90 half stop, 180 closed; found from the tip without it."
    );

    private readonly Option<string> _halfStop = new("--half-stop")
    {
        HelpName = "yes|no|find",
        Description = "Whether the knife is made to stop at 90 degrees; found from the lift without it.",
    };

    private readonly Option<Point?> _dial = ParsedOption.One<Point?>(
        "--dial",
        "X,Y",
        "Where the dial stands on the spring's back, such as 1.2,0.4in; straight above the pivot without it.",
        Place.TryParse,
        Place.Complaint
    );

    private readonly Option<double?> _axis = Degrees(
        "--axis",
        "Direction from the centre pin to the blade, against the drawing's x axis; along the back without it."
    );

    private readonly Option<List<FaceOverride>> _faces = ParsedOption.Many<FaceOverride>(
        "--face",
        "FACE@X,Y",
        "Names the edge next to a place that is taken for another face, such as kick@12.5,-3mm; may be repeated.",
        FaceName.TryParse,
        FaceName.Complaint
    );

    /// <summary>A fresh set.</summary>
    public KnifeOptions() => _halfStop.AcceptOnlyFromAmong(StringComparer.OrdinalIgnoreCase, "yes", "no", "find");

    /// <summary>All of them, in the order of the help.</summary>
    public IEnumerable<Option> All =>
        [_unit, _bladeLayer, _springLayer, _handleLayer, _pinsLayer, _bladeAngle, _halfStop, _dial, _axis, _faces];

    /// <summary>The knife of a request.</summary>
    /// <param name="parsed">The command line.</param>
    /// <param name="dxf">The drawing's bytes.</param>
    public Knife ToKnife(ParseResult parsed, ReadOnlyMemory<byte> dxf)
    {
        Knife knife = new()
        {
            Drawing = new KnifeDrawing
            {
                Dxf = UnsafeByteOperations.UnsafeWrap(dxf),
                Unit = parsed.GetValue(_unit),
                Layers = new LayerRoles
                {
                    Blade = parsed.GetValue(_bladeLayer) ?? "",
                    Spring = parsed.GetValue(_springLayer) ?? "",
                    Handle = parsed.GetValue(_handleLayer) ?? "",
                    Pins = parsed.GetValue(_pinsLayer) ?? "",
                },
            },
            DialPoint = parsed.GetValue(_dial),
        };
        knife.FaceOverrides.AddRange(parsed.GetValue(_faces) ?? []);
        if (parsed.GetValue(_bladeAngle) is { } drawnAt)
        {
            knife.DrawnBladeAngleDeg = drawnAt;
        }

        if (parsed.GetValue(_axis) is { } direction)
        {
            knife.HandleAxisDeg = direction;
        }

        string asked = parsed.GetValue(_halfStop) ?? "find";
        if (!asked.Equals("find", StringComparison.OrdinalIgnoreCase))
        {
            knife.HasHalfStop = asked.Equals("yes", StringComparison.OrdinalIgnoreCase);
        }

        return knife;
    }

    private static Option<string> Layer(string name, string holds, string otherwise) =>
        new(name) { HelpName = "LAYER", Description = $"Layer that holds {holds}; {otherwise} without it." };

    private static Option<double?> Degrees(string name, string description) =>
        ParsedOption.One<double?>(name, "DEG", description, Number.TryParse, Number.Complaint);
}
