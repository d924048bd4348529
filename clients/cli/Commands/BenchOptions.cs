using System.CommandLine;
using Flushback.Cli.Arguments;
using Flushback.Contract.V1;

namespace Flushback.Cli.Commands;

/// <summary>The options that say what is wanted of the knife.</summary>
internal sealed class BenchOptions
{
    private readonly Option<bool> _finished = new("--finished")
    {
        Description = "Wants a finished pair, flush at every stop; without it a pair still to be fitted.",
    };

    private readonly Option<BenchSettings?> _target = ParsedOption.One<BenchSettings?>(
        "--target",
        "STOP=LENGTH",
        "Wanted readings, such as half-stop=+0.005in,closed=0.015in.",
        Targets.TryParse,
        Targets.Complaint
    );

    private readonly Option<double?> _tolerance = ParsedOption.One<double?>(
        "--tolerance",
        "LENGTH",
        "Half the width of the window about every target, such as 0.002in.",
        Length.TryParse,
        Length.Complaint
    );

    private readonly Option<double?> _step = ParsedOption.One<double?>(
        "--step",
        "DEG",
        "Step of the lift curve; half a degree without it.",
        Number.TryParse,
        Number.Complaint
    );

    /// <summary>All of them, in the order of the help.</summary>
    public IEnumerable<Option> All => [_finished, _target, _tolerance, _step];

    /// <summary>The settings of a request; what is not asked for is left to the service.</summary>
    public BenchSettings ToSettings(ParseResult parsed)
    {
        BenchSettings settings = parsed.GetValue(_target)?.Clone() ?? new BenchSettings();
        if (parsed.GetValue(_finished))
        {
            settings.TargetSet = TargetSet.Finished;
        }

        if (parsed.GetValue(_tolerance) is { } mm)
        {
            Targets.ApplyTolerance(mm, settings);
        }

        if (parsed.GetValue(_step) is { } degrees)
        {
            settings.StepDeg = degrees;
        }

        return settings;
    }
}
