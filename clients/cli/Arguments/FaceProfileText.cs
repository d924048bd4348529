using System.Diagnostics.CodeAnalysis;
using Flushback.Contract.V1;

namespace Flushback.Cli.Arguments;

/// <summary>Profiles of single faces on the command line, such as <c>half-stop-face=0.01mm</c>.</summary>
internal static class FaceProfileText
{
    /// <summary>What is wrong with a text that is no profile.</summary>
    public static string Complaint(string text) =>
        $"'{text}' is no profile of a face: write FACE=LENGTH, such as half-stop-face=0.01mm; the faces are {string.Join(", ", FaceName.Names)}.";

    /// <summary>Reads a profile.</summary>
    public static bool TryParse(string text, [NotNullWhen(true)] out FaceProfile? profile)
    {
        profile = null;
        string[] parts = text.Split('=');
        if (
            parts.Length == 2
            && FaceName.TryFace(parts[0], out FaceOverride? face)
            && Length.TryParse(parts[1], out double mm)
        )
        {
            Site site =
                face.FaceCase == FaceOverride.FaceOneofCase.SpringFace
                    ? new Site { SpringFace = face.SpringFace }
                    : new Site { BladeFace = face.BladeFace };
            profile = new FaceProfile { Face = site, ProfileMm = mm };
        }

        return profile is not null;
    }
}
