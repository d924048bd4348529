using System.CommandLine;
using Flushback.Cli.Arguments;
using Flushback.Contract.V1;

namespace Flushback.Cli.Commands;

/// <summary>The options that say what a shop holds a drawing against.</summary>
internal sealed class InspectOptions
{
    private readonly Option<LengthUnit> _unit = ParsedOption.One<LengthUnit>(
        "--units",
        "mm|cm|m|in|thou",
        "Unit of the drawing, over whatever the file says.",
        UnitName.TryParse,
        UnitName.Complaint
    );

    private readonly Option<bool> _guess = new("--guess-units")
    {
        Description = "Guesses the unit of a drawing that states none from its size; the guess is a finding.",
    };

    private readonly Option<List<string>> _cutLayers = new("--cut-layer")
    {
        HelpName = "NAME",
        Description =
            "A layer that is cut; may be repeated. Every visible layer with lines, arcs or circles without it.",
        Arity = ArgumentArity.OneOrMore,
        CustomParser = result => [.. result.Tokens.Select(token => token.Value)],
    };

    private readonly Option<double?> _join = OfLength(
        "--join",
        "Ends no farther apart than this are joined; 0.01 mm without it."
    );

    private readonly Option<double?> _micro = OfLength(
        "--micro",
        "Segments shorter than this are listed; 0.02 mm without it."
    );

    private readonly Option<double?> _tiny = OfLength(
        "--tiny",
        "Contours smaller than this both ways are listed; 0.3 mm without it."
    );

    private readonly Option<double?> _cutter = OfLength(
        "--cutter",
        "Diameter of the cutter that must reach into inner corners; not looked at without it."
    );

    private readonly Option<double?> _web = OfLength(
        "--web",
        "Webs of metal thinner than this are listed; 0.8 mm without it."
    );

    private readonly Option<List<double>> _pins = ParsedOption.Many<double>(
        "--pin",
        "LENGTH",
        "A pin that holes are for, such as 2.4mm or 3/32in; may be repeated. The nearest usual pin without it.",
        Length.TryParse,
        Length.Complaint
    );

    private readonly Option<bool> _reamed = new("--reamed")
    {
        Description = "Holes are cut small and reamed to the fit afterwards.",
    };

    private readonly Option<double?> _kerf = OfLength(
        "--kerf",
        "Width of the kerf; finds the path of its middle, outside of parts and inside of holes."
    );

    private readonly Option<double?> _stock = OfLength(
        "--stock",
        "Stock wanted on the profile for grinding after heat treatment; measured against --finished-layer."
    );

    private readonly Option<string?> _finished = new("--finished-layer")
    {
        HelpName = "NAME",
        Description = "Layer with the finished outlines, to measure the stock against.",
    };

    /// <summary>A fresh set.</summary>
    public InspectOptions() => _unit.Aliases.Add("--unit");

    /// <summary>All of them, in the order of the help.</summary>
    public IEnumerable<Option> All =>
        [_unit, _guess, _cutLayers, _join, _micro, _tiny, _cutter, _web, _pins, _reamed, _kerf, _stock, _finished];

    /// <summary>True when a cut path is wanted.</summary>
    public bool HasKerf(ParseResult parsed) => parsed.GetValue(_kerf) is not null;

    /// <summary>Puts the options into a request; what is not asked for is left to the service.</summary>
    public void Apply(ParseResult parsed, InspectRequest request)
    {
        request.Unit = parsed.GetValue(_unit);
        request.GuessUnit = parsed.GetValue(_guess);
        InspectionSettings settings = new()
        {
            CutLayers = { parsed.GetValue(_cutLayers) ?? [] },
            PinDiametersMm = { parsed.GetValue(_pins) ?? [] },
            HolesAreReamed = parsed.GetValue(_reamed),
            FinishedLayer = parsed.GetValue(_finished) ?? "",
        };
        Set(_join, mm => settings.JoinToleranceMm = mm);
        Set(_micro, mm => settings.MicroSegmentMm = mm);
        Set(_tiny, mm => settings.TinyFeatureMm = mm);
        Set(_cutter, mm => settings.CutterDiameterMm = mm);
        Set(_web, mm => settings.LeastWebMm = mm);
        Set(_kerf, mm => settings.KerfMm = mm);
        Set(_stock, mm => settings.GrindingStockMm = mm);
        request.Settings = settings;

        void Set(Option<double?> option, Action<double> set)
        {
            if (parsed.GetValue(option) is { } mm)
            {
                set(mm);
            }
        }
    }

    private static Option<double?> OfLength(string name, string description) =>
        ParsedOption.One<double?>(name, "LENGTH", description, Length.TryParse, Length.Complaint);
}
