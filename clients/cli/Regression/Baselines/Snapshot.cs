namespace Flushback.Cli.Regression.Baselines;

/// <summary>What is kept of a check: words, numbers with what they may be off, curves and outlines.</summary>
/// <param name="Words">Verdicts, contacts and findings, by name, in the order of the report.</param>
/// <param name="Numbers">Readings and clearances, by name, in the order of the report.</param>
/// <param name="Curves">The lift between the stops, a curve a blade.</param>
/// <param name="Outlines">The knife as drawn.</param>
internal sealed record Snapshot(
    IReadOnlyList<KeptWord> Words,
    IReadOnlyList<KeptNumber> Numbers,
    IReadOnlyList<KeptCurve> Curves,
    KeptOutlines Outlines
)
{
    /// <summary>Name of the word that a knife with two blades has, and no other.</summary>
    public const string Arrangement = "arrangement";

    /// <summary>What every name about the first of two blades begins with.</summary>
    public const string FirstBlade = "first blade, ";

    /// <summary>What every name about the second of two blades begins with.</summary>
    public const string SecondBlade = "second blade, ";

    /// <summary>What the names about each blade begin with; nothing where there is one blade.</summary>
    public IReadOnlyList<string> Blades =>
        Words.Any(word => word.Name == Arrangement) ? [FirstBlade, SecondBlade] : [""];
}

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

/// <summary>The lift over the rotation, at <see cref="Angles"/>.</summary>
/// <param name="Name">What it is.</param>
/// <param name="LiftsMm">Lift against open at each angle, to a ten-thousandth of a millimetre; null where none is read.</param>
/// <param name="WithinMm">How far another may be off at any angle and still be the same, in millimetres.</param>
internal sealed record KeptCurve(string Name, IReadOnlyList<double?> LiftsMm, double WithinMm)
{
    /// <summary>Blade angles at which the lift is kept, in degrees.</summary>
    /// <remarks>
    /// Between the stops, whose own lifts are kept to more decimals; 180 is left out, as whether it still lies within the
    /// rotation may be a matter of the last digit. A corner that passes under the spring does so over tens of degrees, so that
    /// steps of five see what changes there; what is narrower the outlines tell.
    /// </remarks>
    public static IReadOnlyList<int> Angles { get; } = [.. Enumerable.Range(1, 35).Select(i => 5 * i)];
}

/// <summary>The outlines of a knife, in the frame of its drawing.</summary>
/// <param name="WithinMm">How far another may lie off and still be the same, in millimetres.</param>
/// <param name="Parts">Blades, springs and, if there is one, handle.</param>
/// <param name="Pins">Pivots, centre pins and, if there are any, rear pins.</param>
internal sealed record KeptOutlines(double WithinMm, IReadOnlyList<KeptPart> Parts, IReadOnlyList<KeptPin> Pins);

/// <summary>A closed outline.</summary>
/// <param name="Name">Blade, spring or handle; of two blades, which.</param>
/// <param name="Vertices">Its corners, to a ten-thousandth of a millimetre.</param>
internal sealed record KeptPart(string Name, IReadOnlyList<KeptVertex> Vertices)
{
    /// <summary>Blade, spring or handle, whichever it is of two.</summary>
    public string Kind => Name[(Name.LastIndexOf(' ') + 1)..];
}

/// <summary>A corner and the bend of the edge that leaves it.</summary>
/// <param name="X">In millimetres.</param>
/// <param name="Y">In millimetres.</param>
/// <param name="Bulge">Tangent of a quarter of the included angle of the arc to the next corner; 0 for a line.</param>
internal readonly record struct KeptVertex(double X, double Y, double Bulge);

/// <summary>A pin.</summary>
/// <param name="Name">Pivot, centre pin or rear pin; of two blades, whose.</param>
/// <param name="X">In millimetres.</param>
/// <param name="Y">In millimetres.</param>
/// <param name="Diameter">In millimetres.</param>
internal sealed record KeptPin(string Name, double X, double Y, double Diameter);
