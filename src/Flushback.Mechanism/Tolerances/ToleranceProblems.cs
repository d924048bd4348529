using Flushback.Mechanism.Knives;

namespace Flushback.Mechanism.Tolerances;

/// <summary>Why there can be no study of a knife.</summary>
internal static class ToleranceProblems
{
    /// <summary>No tolerance is above zero on anything the knife has.</summary>
    public static KnifeProblem NothingVaries { get; } =
        new(
            "NOTHING_VARIES",
            KnifeSubject.Knife,
            "Nothing of this knife varies with these tolerances, so every part is the one drawn; give a tolerance above zero of something it has."
        );

    /// <summary>The knife as drawn does not go together.</summary>
    public static KnifeProblem DoesNotTurn { get; } =
        new(
            "DOES_NOT_TURN",
            KnifeSubject.Knife,
            "Blade and spring as drawn do not go together at a blade angle of 45 degrees; check the knife as drawn first and mend what it says."
        );
}
