using Flushback.Geometry;

namespace Flushback.Mechanism.Knives;

/// <summary>Why input is no knife.</summary>
/// <param name="Reason">Stable reason, such as <c>PIN_OUTSIDE_PART</c>.</param>
/// <param name="Subject">What it is about.</param>
/// <param name="Sentence">What is wrong, where, and what to do: one sentence for the maker.</param>
/// <param name="At">Where, in the drawing, when at one place.</param>
/// <param name="VertexIndex">Which vertex of the subject's outline, when it is about one.</param>
public sealed record KnifeProblem(
    string Reason,
    KnifeSubject Subject,
    string Sentence,
    Point? At = null,
    int? VertexIndex = null
);

/// <summary>The part of the input a problem is about.</summary>
public enum KnifeSubject
{
    /// <summary>The knife as a whole.</summary>
    Knife,

    /// <summary>The blade's outline.</summary>
    Blade,

    /// <summary>The spring's outline.</summary>
    Spring,

    /// <summary>The handle's outline.</summary>
    Handle,

    /// <summary>The blade pin.</summary>
    Pivot,

    /// <summary>The pin the spring rocks on.</summary>
    CentrePin,

    /// <summary>The pin at the rear end of the spring.</summary>
    RearPin,

    /// <summary>The place of the dial.</summary>
    DialPoint,

    /// <summary>The blade angle at which the blade is drawn.</summary>
    DrawnBladeAngle,

    /// <summary>The faces named by the maker.</summary>
    FaceOverrides,

    /// <summary>Width of the spring in the handle.</summary>
    SpringWidth,

    /// <summary>Preload of the spring in the handle.</summary>
    Preload,

    /// <summary>Where the stiff nose begins.</summary>
    StiffNose,

    /// <summary>Place of the nail nick.</summary>
    NailNick,

    /// <summary>Friction between tang and spring.</summary>
    Friction,

    /// <summary>Hardness of the spring.</summary>
    SpringHardness,
}
