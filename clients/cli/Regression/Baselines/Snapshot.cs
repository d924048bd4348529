namespace Flushback.Cli.Regression.Baselines;

/// <summary>What is kept of a check: words, numbers with what they may be off, and outlines.</summary>
/// <param name="Words">Verdicts, contacts and findings, by name, in the order of the report.</param>
/// <param name="Numbers">Readings and clearances, by name, in the order of the report.</param>
/// <param name="Outlines">The knife as drawn.</param>
internal sealed record Snapshot(
    IReadOnlyList<KeptWord> Words,
    IReadOnlyList<KeptNumber> Numbers,
    KeptOutlines Outlines
);

/// <summary>Something a report says in words.</summary>
/// <param name="Name">What it is about.</param>
/// <param name="Text">What it says.</param>
internal sealed record KeptWord(string Name, string Text);

/// <summary>A number of a report.</summary>
/// <param name="Name">What it is.</param>
/// <param name="Value">The number, in its unit, to six decimals.</param>
/// <param name="Unit">mm, deg, N, MPa, Nmm or N/mm.</param>
/// <param name="Within">How far another may be off and still be the same, in the unit.</param>
internal sealed record KeptNumber(string Name, double Value, string Unit, double Within);

/// <summary>The outlines of a knife, in the frame of its drawing.</summary>
/// <param name="WithinMm">How far another may lie off and still be the same, in millimetres.</param>
/// <param name="Parts">Blade, spring and, if there is one, handle.</param>
/// <param name="Pins">Pivot, centre pin and, if there is one, rear pin.</param>
internal sealed record KeptOutlines(double WithinMm, IReadOnlyList<KeptPart> Parts, IReadOnlyList<KeptPin> Pins);

/// <summary>A closed outline.</summary>
/// <param name="Name">Blade, spring or handle.</param>
/// <param name="Vertices">Its corners, to a ten-thousandth of a millimetre.</param>
internal sealed record KeptPart(string Name, IReadOnlyList<KeptVertex> Vertices);

/// <summary>A corner and the bend of the edge that leaves it.</summary>
/// <param name="X">In millimetres.</param>
/// <param name="Y">In millimetres.</param>
/// <param name="Bulge">Tangent of a quarter of the included angle of the arc to the next corner; 0 for a line.</param>
internal readonly record struct KeptVertex(double X, double Y, double Bulge);

/// <summary>A pin.</summary>
/// <param name="Name">Pivot, centre pin or rear pin.</param>
/// <param name="X">In millimetres.</param>
/// <param name="Y">In millimetres.</param>
/// <param name="Diameter">In millimetres.</param>
internal sealed record KeptPin(string Name, double X, double Y, double Diameter);
