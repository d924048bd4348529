using System.Globalization;
using Flushback.Mechanism.Knives;
using Flushback.Service.Drawings;

namespace Flushback.Service.Validation;

/// <summary>Which field of the contract a part of the knife came from.</summary>
internal static class SubjectFields
{
    /// <summary>Path of the field.</summary>
    /// <param name="subject">What a problem is about.</param>
    /// <param name="source">How the knife came in.</param>
    /// <param name="vertexIndex">Which vertex of the subject's outline, when it is about one.</param>
    public static string PathOf(KnifeSubject subject, KnifeSource source, int? vertexIndex = null)
    {
        string path = subject switch
        {
            KnifeSubject.DialPoint => "knife.dial_point",
            KnifeSubject.DrawnBladeAngle => "knife.drawn_blade_angle_deg",
            KnifeSubject.FaceOverrides => "knife.face_overrides",
            KnifeSubject.Knife => "knife",
            KnifeSubject.SpringWidth => "handle.width_mm",
            KnifeSubject.Preload => "handle.preload_mm",
            KnifeSubject.StiffNose => "handle.stiff_nose_mm",
            _ when source.File is not null => DrawingReader.DxfField,
            KnifeSubject.Blade => "knife.outlines.blade",
            KnifeSubject.Spring => "knife.outlines.spring",
            KnifeSubject.Handle => "knife.outlines.handle",
            KnifeSubject.Pivot => "knife.outlines.pivot",
            KnifeSubject.CentrePin => "knife.outlines.centre_pin",
            KnifeSubject.RearPin => "knife.outlines.rear_pin",
            _ => "knife",
        };

        // A drawing's outlines are put together while it is read: only a caller's own have an index he knows.
        return source.File is null && vertexIndex is { } index
            ? string.Create(CultureInfo.InvariantCulture, $"{path}.vertices[{index}]")
            : path;
    }
}
