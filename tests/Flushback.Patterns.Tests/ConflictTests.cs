using Flushback.Patterns.Parameters;

namespace Flushback.Patterns.Tests;

/// <summary>Each conflict, brought about by as few changes of the default page as do it.</summary>
public sealed class ConflictTests
{
    /// <summary>What is changed, and which numbers the sentence has to be about.</summary>
    public static TheoryData<string, string> Conflicts { get; } =
        new()
        {
            // Said twice.
            {
                "handle.overall_length_mm=170 blade.length_mm=70",
                "handle.overall_length_mm handle.closed_length_mm blade.length_mm"
            },
            {
                "blade.width_mm=14 tang.open_flat_depth_mm=3.4 tang.kick_height_mm=1.6",
                "blade.width_mm tang.open_flat_depth_mm tang.kick_height_mm"
            },
            { "sheepsfoot blade.sweep_mm=20", "blade.sweep_mm blade.family" },
            { "spring.rear_stock_mm=0.4", "spring.rear_stock_mm spring.front_stock_mm" },
            // Places along the handle.
            { "spring.pad_end_mm=6", "spring.pad_end_mm tang.kick_place_mm" },
            { "pins.centre_behind_mm=14", "pins.centre_behind_mm spring.pad_end_mm" },
            { "pins.rear_behind_mm=52", "pins.rear_behind_mm pins.centre_behind_mm" },
            { "pins.rear_behind_mm=86", "pins.rear_behind_mm handle.closed_length_mm handle.front_mm" },
            {
                "pins.centre_behind_mm=30 pins.rear_behind_mm=45 handle.back_drop_mm=5",
                "handle.back_drop_mm pins.rear_behind_mm"
            },
            // The tang.
            { "tang.kick_place_mm=12", "tang.kick_place_mm tang.height_mm" },
            { "tang.kick_height_mm=0.5 tang.kick_radius_mm=2", "tang.kick_height_mm tang.kick_radius_mm" },
            { "blade.width_mm=12.6", "blade.width_mm tang.kick_height_mm tang.kick_radius_mm" },
            {
                "round tang.height_mm=2.5 tang.run_rise_mm=0.2 tang.open_corner_radius_mm=1.5",
                "tang.run_rise_mm tang.open_corner_radius_mm"
            },
            { "round tang.run_rise_mm=0.3", "tang.run_rise_mm readings.closed_mm tang.closed_corner_radius_mm" },
            {
                "tang.height_mm=2.5 tang.open_corner_radius_mm=1.5 tang.closed_corner_radius_mm=1.5",
                "tang.height_mm tang.open_corner_radius_mm tang.closed_corner_radius_mm"
            },
            {
                "tang.height_mm=2.5 tang.length_mm=5 tang.notch_radius_mm=1.2 tang.open_corner_radius_mm=1.5 tang.relief_land_mm=0.9 tang.closed_corner_radius_mm=0",
                "tang.length_mm tang.notch_radius_mm"
            },
            { "tang.shoulder_deg=82", "tang.shoulder_deg spring.end_face_deg" },
            {
                "tang.open_flat_depth_mm=1 tang.notch_radius_mm=1.2",
                "tang.open_flat_depth_mm tang.shoulder_radius_mm tang.notch_radius_mm spring.nose_radius_mm"
            },
            { "tang.open_flat_depth_mm=5", "tang.open_flat_depth_mm spring.nose_depth_mm" },
            { "tang.length_mm=8", "tang.length_mm tang.height_mm" },
            { "handle.front_mm=5", "tang.length_mm handle.front_mm" },
            { "round tang.run_rise_mm=2 handle.front_mm=6", "handle.front_mm tang.height_mm tang.run_rise_mm" },
            // The blade.
            { "blade.length_mm=80", "blade.length_mm handle.closed_length_mm handle.front_mm" },
            {
                "handle.overall_length_mm=175",
                "handle.overall_length_mm blade.length_mm handle.closed_length_mm handle.front_mm"
            },
            { "blade.point_mm=4", "blade.point_mm blade.width_mm" },
            { "blade.point_mm=80", "blade.point_mm blade.length_mm" },
            { "blade.sweep_mm=4", "blade.sweep_mm blade.width_mm" },
            { "blade.sweep_mm=55", "blade.ricasso_mm blade.sweep_mm blade.length_mm" },
            { "sheepsfoot blade.length_mm=20 blade.ricasso_mm=16", "blade.ricasso_mm blade.length_mm" },
            { "blade.ricasso_mm=2", "blade.ricasso_mm tang.kick_height_mm blade.choil_radius_mm" },
            { "blade.ricasso_mm=15", "blade.ricasso_mm blade.length_mm" },
            // The spring, pins, tip and nick.
            { "spring.belly_relief_mm=3", "spring.belly_relief_mm spring.nose_depth_mm spring.centre_depth_mm" },
            {
                "tang.kick_height_mm=0.4 handle.back_drop_mm=2.5",
                "spring.rear_depth_mm tang.kick_height_mm handle.back_drop_mm spring.nose_depth_mm"
            },
            { "blade.point_mm=64", "blade.nick_place_mm" },
            { "tang.height_mm=3.7 pins.pivot_diameter_mm=6", "pins.pivot_diameter_mm tang.height_mm pins.wall_mm" },
            {
                "pins.centre_diameter_mm=3.5",
                "pins.centre_diameter_mm pins.centre_depth_mm spring.centre_depth_mm pins.wall_mm"
            },
            { "pins.rear_diameter_mm=3", "pins.rear_diameter_mm pins.rear_depth_mm spring.rear_depth_mm pins.wall_mm" },
            { "handle.height_mm=9.7", "pins.pivot_diameter_mm handle.height_mm handle.front_mm pins.wall_mm" },
            {
                "pins.centre_depth_mm=1.3 spring.front_stock_mm=0.8 spring.rear_stock_mm=0.8",
                "pins.centre_diameter_mm pins.centre_depth_mm handle.height_mm pins.wall_mm"
            },
            {
                "pins.rear_depth_mm=1.3 spring.front_stock_mm=0.8 spring.rear_stock_mm=0.8",
                "pins.rear_diameter_mm pins.rear_depth_mm pins.rear_behind_mm pins.wall_mm"
            },
            {
                "handle.tip_depth_mm=6",
                "handle.tip_depth_mm handle.height_mm handle.taper_mm blade.length_mm blade.family"
            },
            { "blade.nick_place_mm=62", "blade.nick_place_mm blade.nick_length_mm blade.point_mm" },
            { "handle.height_mm=16", "blade.nick_width_mm handle.height_mm handle.swell_mm blade.width_mm" },
            {
                "spring.centre_depth_mm=5.2 spring.rear_depth_mm=4",
                "tang.kick_height_mm spring.centre_depth_mm spring.rear_depth_mm"
            },
        };

    [Theory]
    [MemberData(nameof(Conflicts))]
    public void One_sentence_names_the_numbers_in_conflict_and_what_to_change(string changes, string paths)
    {
        (DrawnPattern? pattern, PatternConflict? conflict) = PatternDrawing.Make(Changed(changes));

        Assert.Null(pattern);
        Assert.Equal(paths, string.Join(' ', conflict!.Parameters));
        Assert.EndsWith(".", conflict.Sentence, StringComparison.Ordinal);
        Assert.DoesNotContain('\n', conflict.Sentence);
        Assert.True(
            conflict.Parameters.Any(path =>
                path == "blade.family"
                || conflict.Sentence.Contains(PatternLimits.Of(path).Name, StringComparison.OrdinalIgnoreCase)
            ),
            conflict.Sentence
        );
    }

    [Theory]
    [MemberData(nameof(Conflicts))]
    public void Without_those_changes_there_is_none(string changes, string paths)
    {
        string shape = changes.Split(' ')[0];
        Assert.NotEmpty(paths);
        Assert.Null(PatternDrawing.Make(Changed(shape.Contains('=', StringComparison.Ordinal) ? "" : shape)).Conflict);
    }

    [Fact]
    public void What_the_sentence_asks_for_is_enough()
    {
        // The sentence on a short tang says how long it has to be.
        PatternConflict conflict = PatternDrawing.Make(Changed("tang.length_mm=8")).Conflict!;
        string asked = conflict.Sentence.Split("make the tang ")[1].Split(' ')[0];
        double length = double.Parse(asked, System.Globalization.CultureInfo.InvariantCulture) + 0.01;
        Assert.Null(PatternDrawing.Make(Changed(FormattableString.Invariant($"tang.length_mm={length}"))).Conflict);
    }

    private static PatternParameters Changed(string changes)
    {
        PatternParameters page = PatternParameters.Default;
        foreach (string change in changes.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            string[] parts = change.Split('=');
            page = parts[0] switch
            {
                "sheepsfoot" => page with { Blade = page.Blade with { Family = BladeFamily.Sheepsfoot } },
                "round" => page with { Tang = page.Tang with { HasHalfStop = false } },
                _ => PatternLimits
                    .Of(parts[0])
                    .Write(page, double.Parse(parts[1], System.Globalization.CultureInfo.InvariantCulture)),
            };
        }

        return page;
    }
}
