namespace Flushback.Mechanism.Knives;

/// <summary>The trade's words for the faces and corners of blade and spring.</summary>
public static class FaceNames
{
    /// <summary>A face of the blade in lower case, without an article.</summary>
    public static string Of(BladeFace face) =>
        face switch
        {
            BladeFace.OpenFlat => "open flat",
            BladeFace.NotchCorner => "notch corner",
            BladeFace.Shoulder => "shoulder",
            BladeFace.OpenCorner => "open corner",
            BladeFace.HalfStopFace => "half-stop face",
            BladeFace.ClosedCorner => "closed corner",
            BladeFace.ClosedFace => "closed face",
            BladeFace.Kick => "kick",
            BladeFace.Ricasso => "ricasso",
            BladeFace.Edge => "edge",
            BladeFace.Spine => "spine",
            BladeFace.Run => "run",
            _ => "unnamed part of the blade",
        };

    /// <summary>A face of the spring in lower case, without an article.</summary>
    public static string Of(SpringFace face) =>
        face switch
        {
            SpringFace.EndFace => "end face",
            SpringFace.NoseCorner => "nose corner",
            SpringFace.Underside => "underside",
            SpringFace.Tail => "tail",
            SpringFace.Back => "back",
            _ => "unnamed part of the spring",
        };

    /// <summary>A pair: <c>open corner on underside</c>.</summary>
    public static string Of(BladeFace blade, SpringFace spring) => $"{Of(blade)} on {Of(spring)}";
}
