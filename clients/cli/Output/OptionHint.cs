namespace Flushback.Cli.Output;

/// <summary>Which option sets a field of the contract, for sentences that ask to set it.</summary>
internal static class OptionHint
{
    private static readonly (string Field, string Option)[] Options =
    [
        ("name", "--name"),
        ("knife.drawing.layers.blade", "--blade-layer"),
        ("knife.drawing.layers.spring", "--spring-layer"),
        ("knife.drawing.layers.handle", "--handle-layer"),
        ("knife.drawing.layers.pins", "--pins-layer"),
        ("knife.drawing.unit", "--unit"),
        ("knife.drawn_blade_angle_deg", "--blade-angle"),
        ("knife.dial_point", "--dial"),
        ("knife.handle_axis_deg", "--axis"),
        ("knife.has_half_stop", "--half-stop"),
        ("knife.face_overrides", "--face"),
        ("bench.step_deg", "--step"),
        ("bench.half_stop.lift_mm", "--target"),
        ("bench.closed.lift_mm", "--target"),
        ("bench.open.tolerance_mm", "--tolerance"),
        ("bench.half_stop.tolerance_mm", "--tolerance"),
        ("bench.closed.tolerance_mm", "--tolerance"),
        ("handle.width_mm", "--width"),
        ("handle.preload_mm", "--preload"),
        ("handle.rear_pin_shift_mm", "--rear-pin-shift"),
        ("handle.spring_steel", "--spring-steel"),
        ("handle.own_steel.name", "--spring-steel"),
        ("handle.own_steel.modulus_mpa", "--spring-modulus"),
        ("handle.own_steel.tensile_mpa", "--spring-strength"),
        ("handle.spring_hardness_hrc", "--spring-hardness"),
        ("handle.blade_hardness_hrc", "--blade-hardness"),
        ("handle.friction", "--friction"),
        ("handle.nail_nick_mm", "--nick"),
        ("handle.stiff_nose_mm", "--stiff-nose"),
        ("handle.wanted_pull_n", "--pull"),
        ("handle.most_stress_mpa", "--most-stress"),
        ("tolerances.pins_mm", "--pins"),
        ("tolerances.clearance_mm", "--clearance"),
        ("tolerances.profile_mm", "--profile"),
        ("tolerances.faces", "--face-profile"),
        ("tolerances.depth_mm", "--depth-off"),
        ("tolerances.width_mm", "--width-off"),
        ("tolerances.preload_mm", "--preload-off"),
        ("parts", "--parts"),
        ("passes", "--pass"),
        ("plan.stock_kept_mm", "--stock-kept"),
        ("plan.rest_window_deg", "--rest-window"),
        ("plan.tip_depth", "--tip-depth"),
        ("plan.least_corner_radius_mm", "--least-radius"),
        ("plan.relief", "--relief"),
        ("plan.most_off_open_flat_mm", "--open-flat"),
        ("measured", "--measured"),
        ("remains.least_pin_wall_mm", "--pin-wall"),
        ("unit", "--units"),
        ("settings.cut_layers", "--cut-layer"),
        ("settings.join_tolerance_mm", "--join"),
        ("settings.micro_segment_mm", "--micro"),
        ("settings.tiny_feature_mm", "--tiny"),
        ("settings.cutter_diameter_mm", "--cutter"),
        ("settings.least_web_mm", "--web"),
        ("settings.pin_diameters_mm", "--pin"),
        ("settings.kerf_mm", "--kerf"),
        ("settings.grinding_stock_mm", "--stock"),
        ("settings.finished_layer", "--finished-layer"),
    ];

    /// <summary>The option in words to put after a sentence; empty when no option sets the field.</summary>
    public static string For(string field)
    {
        string option = Array.Find(Options, known => field.StartsWith(known.Field, StringComparison.Ordinal)).Option;
        return option is null ? "" : $" (option {option})";
    }
}
