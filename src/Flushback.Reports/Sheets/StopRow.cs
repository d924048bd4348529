using Flushback.Geometry;
using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Knives;
using Flushback.Reports.Wording;

namespace Flushback.Reports.Sheets;

/// <summary>One stop in words.</summary>
internal sealed record StopRow
{
    public required Stop Stop { get; init; }

    public required string Name { get; init; }

    public required string Thou { get; init; }

    public required string Mm { get; init; }

    public required string WindowThou { get; init; }

    public required string WindowMm { get; init; }

    public required string Verdict { get; init; }

    public required bool IsGood { get; init; }

    public required bool Rests { get; init; }

    public required string RestsAt { get; init; }

    public required string Nominal { get; init; }

    public required IReadOnlyList<ContactRow> Contacts { get; init; }

    public required string Standing { get; init; }

    public required IReadOnlyList<string> Remarks { get; init; }

    public static StopRow Of(BenchReport report, StopReading reading, Measure measure)
    {
        double floor = VerdictWords.Floor(reading);
        double ceiling = VerdictWords.Ceiling(reading);
        return new StopRow
        {
            Stop = reading.Stop,
            Name = StopNames.Of(reading.Stop),
            Thou = measure.SignedThou(reading.LiftMm),
            Mm = measure.SignedMm(reading.LiftMm),
            WindowThou = $"{measure.SignedThou(floor)} to {measure.SignedThou(ceiling)}",
            WindowMm = $"{measure.SignedMm(floor)} to {measure.SignedMm(ceiling)}",
            Verdict = VerdictWords.Of(reading, measure),
            IsGood = reading.Verdict == ReadingVerdict.Good,
            Rests = reading.Rests,
            RestsAt = reading.Rests ? measure.DegreesOnly(reading.RestAngle) : "no rest",
            Nominal = measure.DegreesOnly(reading.NominalAngle, 0),
            Contacts = ContactRow.AllOf(report, reading, measure),
            Standing = StandingOf(reading, measure),
            Remarks = [.. RemarksOn(reading, measure)],
        };
    }

    private static IEnumerable<string> RemarksOn(StopReading reading, Measure measure)
    {
        if (reading.NearMisses is [var nearest, ..])
        {
            string pair = FaceNames.Of(nearest.BladeFace, nearest.SpringFace);
            yield return $"Next to touch: {pair}, {measure.Length(nearest.GapMm)} away.";
        }

        if (reading.ShoulderAngle is { } shoulder)
        {
            yield return $"The shoulder butts on the end face at {measure.Degrees(shoulder)}.";
        }

        if (!reading.Rests)
        {
            yield return $"Read with the blade at {measure.Degrees(reading.RestAngle)}, where it does not stay by itself.";
        }
        else if (reading.Stop != Stop.Open)
        {
            string nominal = measure.Degrees(reading.NominalAngle, 0);
            yield return reading.LiftAtNominalMm is { } held
                ? $"Held at {nominal} instead of at rest, the dial reads {measure.Reading(held)}."
                : $"The blade cannot be held at {nominal}.";
        }
    }

    private static string StandingOf(StopReading reading, Measure measure) =>
        reading.Contacts.Length switch
        {
            0 => "No contact found here.",
            1 when reading.Contacts[0].LengthMm > 0 =>
                $"One face lies on the other along {measure.Length(reading.Contacts[0].LengthMm)}.",
            1 => "One contact only.",
            2 => $"Two contacts, {measure.Mm(reading.ContactSpreadMm, 2)} mm apart.",
            int count => FormattableString.Invariant(
                $"{count} contacts, the outer two {measure.Mm(reading.ContactSpreadMm, 2)} mm apart."
            ),
        };
}

/// <summary>One contact in words; its number is the one in the pictures.</summary>
internal sealed record ContactRow(int Number, string Pair, string X, string Y, string Touches)
{
    public bool IsFace => Touches.StartsWith("along", StringComparison.Ordinal);

    public static IReadOnlyList<ContactRow> AllOf(BenchReport report, StopReading reading, Measure measure)
    {
        int first = ContactNumbers.FirstAt(report, reading.Stop);
        return [.. reading.Contacts.Select((contact, index) => Of(report, contact, first + index, measure))];
    }

    private static ContactRow Of(BenchReport report, Contact contact, int number, Measure measure)
    {
        Point place = report.Placement.ToDrawing.Apply(contact.At);
        return new ContactRow(
            number,
            FaceNames.Of(contact.BladeFace, contact.SpringFace),
            measure.Mm(place.X, 2),
            measure.Mm(place.Y, 2),
            contact.LengthMm > 0 ? $"along {measure.Mm(contact.LengthMm, 2)} mm" : "at a point"
        );
    }
}
