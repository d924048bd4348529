using Flushback.Mechanism.Bench;
using Flushback.Patterns.Parameters;

namespace Flushback.Service.Mapping;

/// <summary>How a pattern is checked: what the caller leaves open follows from the page of dimensions.</summary>
internal static class PatternCheckMapping
{
    /// <summary>The settings with the wanted readings as targets where the caller names neither them nor a set of targets.</summary>
    public static Wire.BenchSettings WithTargets(this Wire.BenchSettings? asked, StopTargets targets)
    {
        Wire.BenchSettings settings = asked?.Clone() ?? new Wire.BenchSettings();
        if (settings.TargetSet != Wire.TargetSet.Unspecified)
        {
            return settings;
        }

        settings.Open = With(settings.Open, targets.Open);
        settings.HalfStop = With(settings.HalfStop, targets.HalfStop);
        settings.Closed = With(settings.Closed, targets.Closed);
        return settings;
    }

    /// <summary>The settings with width, preload and nail nick of the pattern where the caller gives none.</summary>
    public static Wire.HandleSettings WithDimensionsOf(this Wire.HandleSettings asked, PatternParameters dimensions)
    {
        Wire.HandleSettings settings = asked.Clone();
        if (!settings.HasWidthMm)
        {
            settings.WidthMm = dimensions.Spring.WidthMm;
        }

        if (
            settings.PreloadCase == Wire.HandleSettings.PreloadOneofCase.None
            && dimensions.Spring.PreloadMm is { } preload
        )
        {
            settings.PreloadMm = preload;
        }

        if (!settings.HasNailNickMm && dimensions.Blade.NickPlaceMm is { } nick)
        {
            settings.NailNickMm = nick;
        }

        return settings;
    }

    private static Wire.StopTarget With(Wire.StopTarget? asked, StopTarget wanted)
    {
        Wire.StopTarget target = asked ?? new Wire.StopTarget();
        if (!target.HasLiftMm)
        {
            target.LiftMm = wanted.LiftMm;
        }

        if (!target.HasToleranceMm)
        {
            target.ToleranceMm = wanted.ToleranceMm;
        }

        return target;
    }
}
