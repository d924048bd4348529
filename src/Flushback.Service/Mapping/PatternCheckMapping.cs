using Flushback.Patterns.Parameters;

namespace Flushback.Service.Mapping;

/// <summary>How a pattern is checked: what the caller leaves open follows from the page of dimensions.</summary>
internal static class PatternCheckMapping
{
    /// <summary>The settings with the wanted readings as targets where the caller names neither them nor a set of targets.</summary>
    public static Wire.BenchSettings WithReadingsOf(this Wire.BenchSettings? asked, PatternParameters dimensions)
    {
        Wire.BenchSettings settings = asked?.Clone() ?? new Wire.BenchSettings();
        if (settings.TargetSet != Wire.TargetSet.Unspecified)
        {
            return settings;
        }

        settings.HalfStop = WithLift(settings.HalfStop, dimensions.Readings.HalfStopMm);
        settings.Closed = WithLift(settings.Closed, dimensions.Readings.ClosedMm);
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

    private static Wire.StopTarget WithLift(Wire.StopTarget? asked, double liftMm)
    {
        Wire.StopTarget target = asked ?? new Wire.StopTarget();
        if (!target.HasLiftMm)
        {
            target.LiftMm = liftMm;
        }

        return target;
    }
}
