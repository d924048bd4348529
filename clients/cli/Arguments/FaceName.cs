using System.Diagnostics.CodeAnalysis;
using Flushback.Contract.V1;
using Google.Protobuf.Reflection;

namespace Flushback.Cli.Arguments;

/// <summary>Faces named on the command line, such as <c>half-stop-face@12.5,-3mm</c>.</summary>
internal static class FaceName
{
    private static readonly IReadOnlyDictionary<string, FaceOverride> Faces = AllFaces();

    /// <summary>The names of all faces, in words of the contract with hyphens.</summary>
    public static IEnumerable<string> Names => Faces.Keys;

    /// <summary>What is wrong with a text that is no named face.</summary>
    public static string Complaint(string text) =>
        $"'{text}' names no face: write FACE@X,Y and the unit, such as half-stop-face@12.5,-3mm; the faces are {string.Join(", ", Names)}.";

    /// <summary>Reads a face and the place of its edge.</summary>
    /// <param name="text">Name, @ and place.</param>
    /// <param name="named">The face.</param>
    /// <returns>False when the text names none.</returns>
    public static bool TryParse(string text, [NotNullWhen(true)] out FaceOverride? named)
    {
        named = null;
        int at = text.IndexOf('@', StringComparison.Ordinal);
        if (at > 0 && TryFace(text[..at], out FaceOverride? face) && Place.TryParse(text[(at + 1)..], out Point? near))
        {
            named = face.Clone();
            named.Near = near;
        }

        return named is not null;
    }

    /// <summary>A face by its name, without a place.</summary>
    public static bool TryFace(string name, [NotNullWhen(true)] out FaceOverride? face) =>
        Faces.TryGetValue(name.ToLowerInvariant(), out face);

    /// <summary>The name of a face.</summary>
    public static string Of(Site site) =>
        Faces
            .First(known =>
                site.HasSpringFace
                    ? known.Value.HasSpringFace && known.Value.SpringFace == site.SpringFace
                    : known.Value.HasBladeFace && known.Value.BladeFace == site.BladeFace
            )
            .Key;

    private static Dictionary<string, FaceOverride> AllFaces()
    {
        Dictionary<string, FaceOverride> faces = [];
        foreach (BladeFace face in Enum.GetValues<BladeFace>().Where(face => face != BladeFace.Unspecified))
        {
            faces.Add(
                NameOf(KnifeReflection.Descriptor, "BladeFace", "BLADE_FACE_", (int)face),
                new() { BladeFace = face }
            );
        }

        foreach (SpringFace face in Enum.GetValues<SpringFace>().Where(face => face != SpringFace.Unspecified))
        {
            faces.Add(
                NameOf(KnifeReflection.Descriptor, "SpringFace", "SPRING_FACE_", (int)face),
                new() { SpringFace = face }
            );
        }

        return faces;
    }

    private static string NameOf(FileDescriptor file, string type, string prefix, int number) =>
        file.FindTypeByName<EnumDescriptor>(type)
            .FindValueByNumber(number)
            .Name[prefix.Length..]
            .Replace('_', '-')
            .ToLowerInvariant();
}
