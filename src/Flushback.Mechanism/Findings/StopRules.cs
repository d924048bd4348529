using Flushback.Geometry;
using Flushback.Mechanism.Bench;

namespace Flushback.Mechanism.Findings;

/// <summary>What can be amiss at one stop: the reading, the rest, the contacts.</summary>
internal static class StopRules
{
    private const int WantedContacts = 2;

    /// <summary>The findings of one stop.</summary>
    public static IEnumerable<Finding> Judge(StopReading stop, BenchSettings settings)
    {
        if (!stop.Rests)
        {
            yield return NoRest(stop);
            yield break;
        }

        if (stop.Verdict is ReadingVerdict.High or ReadingVerdict.Low)
        {
            yield return OutsideWindow(stop);
        }

        double off = (stop.RestAngle - stop.NominalAngle).Degrees;
        if (Math.Abs(off) > settings.RestAngleTolerance.Degrees)
        {
            yield return RestAngleOff(stop, off, settings);
        }

        foreach (Finding finding in Contacts(stop, settings))
        {
            yield return finding;
        }
    }

    private static Finding NoRest(StopReading stop)
    {
        string advice = stop.Stop switch
        {
            Stop.Open =>
                "Move the rear end of the open flat further behind the pivot, or tilt the flat so that it touches at its rear, so that the spring presses the shoulder home.",
            Stop.HalfStop =>
                "Make both ends of the half-stop face touch, one on each side of the pivot; if the knife is meant to have no half stop, say so.",
            _ =>
                "Let the kick and the closed corner touch the spring, one on each side of the pivot, and keep edge and tang clear of the spring.",
        };
        return new Finding(
            FindingCodes.NoRest,
            Severity.Fault,
            $"The blade does not come to rest {Said.Of(stop.Stop)}: nothing on the other side of the pivot stops it from turning on.",
            advice,
            stop.Stop,
            stop.Contacts.IsEmpty ? null : stop.Contacts[0].At
        );
    }

    private static Finding OutsideWindow(StopReading stop)
    {
        bool high = stop.Verdict == ReadingVerdict.High;
        double limit = stop.Target.LiftMm + (high ? stop.Target.ToleranceMm : -stop.Target.ToleranceMm);
        double over = Math.Abs(stop.LiftMm - stop.Target.LiftMm);
        string face = stop.Stop == Stop.HalfStop ? "half-stop face" : "closed face and kick";
        string advice = high
            ? $"Take the {face} down evenly until the dial has fallen by {Said.Length(over)}."
            : $"No metal can be put back: lower the open flat by as much as brings everything else up by {Said.Length(over)}, or draw the {face} that much higher.";
        return new Finding(
            high ? FindingCodes.ReadingHigh : FindingCodes.ReadingLow,
            Severity.Warning,
            $"The spring reads {Said.Reading(stop.LiftMm)} {Said.Of(stop.Stop)}, {(high ? "above" : "below")} its window which ends at {Said.Reading(limit)}.",
            advice,
            stop.Stop,
            stop.Contacts.IsEmpty ? null : stop.Contacts[0].At,
            stop.LiftMm,
            limit,
            "mm"
        );
    }

    private static Finding RestAngleOff(StopReading stop, double off, BenchSettings settings)
    {
        string advice = stop.Stop switch
        {
            Stop.Open when off > 0 =>
                "Move the shoulder forward, or shorten the spring's nose, so that the blade opens fully.",
            Stop.Open => "Move the shoulder back, or lengthen the spring's nose, so that the blade stops in line.",
            Stop.HalfStop when off > 0 =>
                "Take metal off the front contact of the half-stop face, the one nearer the spring's nose, to turn the blade back.",
            Stop.HalfStop =>
                "Take metal off the rear contact of the half-stop face, the one nearer the centre pin, to let the blade turn on.",
            _ when off > 0 => "Take metal off the closed corner to raise the tip, or leave more on the kick.",
            _ => "Take metal off the kick to lower the tip, keeping its radius.",
        };
        return new Finding(
            FindingCodes.RestAngleOff,
            Severity.Warning,
            $"The blade rests at {Said.Degrees(stop.RestAngle.Degrees)} {Said.Of(stop.Stop)}, {Said.Degrees(Math.Abs(off))} {(off > 0 ? "past" : "short of")} {stop.NominalAngle.Degrees.ToString("0", System.Globalization.CultureInfo.InvariantCulture)}.",
            advice,
            stop.Stop,
            null,
            off,
            settings.RestAngleTolerance.Degrees,
            "deg"
        );
    }

    private static IEnumerable<Finding> Contacts(StopReading stop, BenchSettings settings)
    {
        Point? first = stop.Contacts.IsEmpty ? null : stop.Contacts[0].At;
        foreach (Contact face in stop.Contacts.Where(contact => contact.LengthMm > settings.FaceContactLengthMm))
        {
            yield return new Finding(
                FindingCodes.FaceContact,
                Severity.Warning,
                $"A flat lies on a flat {Said.Of(stop.Stop)}, along {Said.Length(face.LengthMm)}: such a stop wobbles and fills with dirt.",
                "Relieve the middle of the face with a shallow hollow so that only its two ends touch.",
                stop.Stop,
                face.At,
                face.LengthMm,
                settings.FaceContactLengthMm,
                "mm"
            );
        }

        if (stop.Contacts.Length == 1 && stop.Contacts[0].LengthMm > settings.FaceContactLengthMm)
        {
            yield break;
        }

        if (stop.Contacts.Length < WantedContacts)
        {
            yield return Count(
                FindingCodes.SingleContact,
                $"The blade stands on one point only {Said.Of(stop.Stop)}.",
                "Shape the face so that two places touch, one on each side of the pivot."
            );
        }
        else if (stop.Contacts.Length > WantedContacts)
        {
            yield return Count(
                FindingCodes.ManyContacts,
                $"{stop.Contacts.Length} places touch {Said.Of(stop.Stop)}; which two carry will depend on the last thousandth.",
                "Relieve the places between, so that exactly two touch, as far apart as they can be."
            );
        }

        if (stop.Contacts.Length >= WantedContacts && stop.ContactSpreadMm < settings.LeastContactSpreadMm)
        {
            yield return new Finding(
                FindingCodes.ContactsClose,
                Severity.Warning,
                $"The contacts {Said.Of(stop.Stop)} lie only {Said.Length(stop.ContactSpreadMm)} apart, so the blade will feel loose.",
                "Lengthen the face or move the relief so that its ends carry.",
                stop.Stop,
                first,
                stop.ContactSpreadMm,
                settings.LeastContactSpreadMm,
                "mm"
            );
        }

        Finding Count(string code, string message, string advice) =>
            new(code, Severity.Warning, message, advice, stop.Stop, first, stop.Contacts.Length, WantedContacts);
    }
}
