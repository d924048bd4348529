using System.CommandLine;
using Flushback.Cli.Arguments;
using Flushback.Contract.V1;

namespace Flushback.Cli.Commands;

/// <summary>The options that say what a plan is to reach, what it may take, and what was measured.</summary>
internal sealed class PlanOptions
{
    private readonly Option<MeasuredReadings?> _measured = ParsedOption.One<MeasuredReadings?>(
        "--measured",
        "STOP=LENGTH",
        "What the dial really read, zeroed open, such as half-stop=9thou,closed=22thou; the plan starts from there.",
        Measured.TryParse,
        Measured.Complaint
    );

    private readonly Option<double?> _stock = Length(
        "--stock-kept",
        "Metal left for fitting: half stop and closed are to read this much above their targets; none without it."
    );

    private readonly Option<double?> _restWindow = ParsedOption.One<double?>(
        "--rest-window",
        "DEG",
        "How far half stop and closed may rest from 90 and 180 degrees; 1 without it.",
        Number.TryParse,
        Number.Complaint
    );

    private readonly Option<LengthWindow?> _tipDepth = ParsedOption.One<LengthWindow?>(
        "--tip-depth",
        "LEAST,MOST",
        "How deep the tip is to lie in the handle when closed, such as 1mm,3mm; anywhere without it.",
        Window.TryParse,
        Window.Complaint
    );

    private readonly Option<double?> _radius = Length(
        "--least-radius",
        "Least radius wanted on the corners that touch; a rounder kick stays; 0.25 mm without it, 0 leaves them."
    );

    private readonly Option<ReliefWanted?> _relief = ParsedOption.One<ReliefWanted?>(
        "--relief",
        "DEPTH,MARGIN",
        "A relief in each face that is cut, such as 3thou,0.8mm; the margin may be left out; none without it.",
        Relief.TryParse,
        Relief.Complaint
    );

    private readonly Option<double?> _openFlat = Length(
        "--open-flat",
        "Most that may come off the open flat, the reference; 0.25 mm without it."
    );

    private readonly Option<double?> _wall = Length(
        "--pin-wall",
        "Least metal to leave around a pin's hole; 0.8 mm without it."
    );

    /// <summary>All of them, in the order of the help.</summary>
    public IEnumerable<Option> All => [_measured, _stock, _restWindow, _tipDepth, _radius, _relief, _openFlat, _wall];

    /// <summary>What was measured; null when nothing was.</summary>
    public MeasuredReadings? ReadingsIn(ParseResult parsed) => parsed.GetValue(_measured);

    /// <summary>What has to be left; null to leave it to the service.</summary>
    public PassSettings? RemainsIn(ParseResult parsed) =>
        parsed.GetValue(_wall) is { } mm ? new PassSettings { LeastPinWallMm = mm } : null;

    /// <summary>The settings of a request; what is not asked for is left to the service.</summary>
    public PlanSettings ToSettings(ParseResult parsed)
    {
        PlanSettings settings = new() { TipDepth = parsed.GetValue(_tipDepth), Relief = parsed.GetValue(_relief) };
        if (parsed.GetValue(_stock) is { } stock)
        {
            settings.StockKeptMm = stock;
        }

        if (parsed.GetValue(_restWindow) is { } degrees)
        {
            settings.RestWindowDeg = degrees;
        }

        if (parsed.GetValue(_radius) is { } radius)
        {
            settings.LeastCornerRadiusMm = radius;
        }

        if (parsed.GetValue(_openFlat) is { } most)
        {
            settings.MostOffOpenFlatMm = most;
        }

        return settings;
    }

    private static Option<double?> Length(string name, string description) =>
        ParsedOption.One<double?>(name, "LENGTH", description, Arguments.Length.TryParse, Arguments.Length.Complaint);
}
