namespace Flushback.Reports.Sheets;

/// <summary>What every maker should hear once.</summary>
/// <remarks>Common practice, no source.</remarks>
internal static class Cautions
{
    public static IReadOnlyList<string> All { get; } =
    [
        "Shield and glasses at the grinder; a respirator against metal and handle dust.",
        "Heat treatment belongs in a qualified shop; hot oil burns, so quench where a fire can be put out.",
        "A spring has sharp edges and flies when it slips under load: glasses on, and keep clear in assembly and in every test.",
        "Tape the edge while you try the action; a slip joint does not lock.",
        "These numbers are estimates from a drawing, not a certification, and release no part.",
        "What may be carried and sold differs from place to place: ask locally.",
    ];

    /// <summary>What belongs on a card that lies beside the grinder.</summary>
    public static IReadOnlyList<string> AtTheBench { get; } =
    [
        All[0],
        "Ground steel is hot: hold it so that you can let go, dip it often, and stop before it colours; what has turned blue has lost its temper.",
        .. All.Skip(2),
    ];
}
