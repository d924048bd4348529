using System.Globalization;
using Flushback.Dxf.Writing;
using Flushback.Geometry;
using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Knives;
using Flushback.Reports.Sheets;
using Flushback.Service.Drawings;

namespace Flushback.Service.Artifacts;

/// <summary>The knife in each stop and its contacts, drawn over the user's own drawing on layers of our own.</summary>
internal static class ContactDrawing
{
    /// <summary>Layer of the contact points of all stops.</summary>
    public const string ContactsLayer = "FLUSHBACK_CONTACTS";

    private const int Red = 1;
    private const int Green = 3;
    private const int Cyan = 4;
    private const int Magenta = 6;

    // Small enough to sit inside a tang, large enough to find on a print.
    private const double MarkRadiusMm = 0.4;
    private const double TextHeightMm = 0.6;

    /// <summary>The user's drawing with our layers beside his, or a new one when the knife came as outlines.</summary>
    public static byte[] Of(BenchReport bench, KnifeSource source) =>
        KnifeOverlay.Of(source, [ContactsOf(bench), .. bench.Stops.Select(stop => PoseOf(stop, bench))]);

    private static OverlayLayer ContactsOf(BenchReport bench)
    {
        RigidMotion toDrawing = bench.Placement.ToDrawing;
        IEnumerable<OverlayEntity> marks = bench.Stops.SelectMany(stop =>
            stop.Contacts.SelectMany(
                (contact, i) =>
                    MarkOf(
                        toDrawing.Apply(contact.At),
                        $"{NameOf(stop.Stop)} {Number(ContactNumbers.FirstAt(bench, stop.Stop) + i)}"
                    )
            )
        );
        return new OverlayLayer(ContactsLayer, Red, [.. marks]);
    }

    private static IEnumerable<OverlayEntity> MarkOf(Point at, string text) =>
        [
            new OverlayPoint(at),
            new OverlayCircle(new Circle(at, MarkRadiusMm)),
            new OverlayText(text, at + new Vector(MarkRadiusMm, MarkRadiusMm), TextHeightMm),
        ];

    private static OverlayLayer PoseOf(StopReading stop, BenchReport bench)
    {
        Knife knife = bench.Placement.Knife;
        RigidMotion toDrawing = bench.Placement.ToDrawing;
        Outline blade = knife.Blade.Transformed(Knife.BladeAt(stop.RestAngle).Then(toDrawing));
        Outline spring = knife.Spring.Transformed(knife.SpringAt(stop.SpringRotation).Then(toDrawing));
        (string layer, int colour) = stop.Stop switch
        {
            Stop.Open => ("FLUSHBACK_OPEN", Green),
            Stop.HalfStop => ("FLUSHBACK_HALF_STOP", Cyan),
            _ => ("FLUSHBACK_CLOSED", Magenta),
        };
        return new OverlayLayer(layer, colour, [OverlayPath.Of(blade), OverlayPath.Of(spring)]);
    }

    private static string NameOf(Stop stop) =>
        stop switch
        {
            Stop.Open => "open",
            Stop.HalfStop => "half stop",
            _ => "closed",
        };

    private static string Number(int number) => number.ToString(CultureInfo.InvariantCulture);
}
