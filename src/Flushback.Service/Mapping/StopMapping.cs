using Flushback.Geometry;
using Flushback.Mechanism.Bench;

namespace Flushback.Service.Mapping;

/// <summary>The dial at a stop, to the contract.</summary>
internal static class StopMapping
{
    /// <summary>To the contract.</summary>
    /// <param name="reading">The dial at one stop.</param>
    /// <param name="toDrawing">From the knife frame to the drawing.</param>
    public static Wire.StopReading ToWire(this StopReading reading, RigidMotion toDrawing)
    {
        Wire.StopReading wire = new()
        {
            Stop = reading.Stop.ToWire(),
            Rests = reading.Rests,
            RestAngleDeg = reading.RestAngle.Degrees,
            NominalAngleDeg = reading.NominalAngle.Degrees,
            LiftMm = reading.LiftMm,
            SpringRotationDeg = reading.SpringRotation.Degrees,
            TargetMm = reading.Target.LiftMm,
            ToleranceMm = reading.Target.ToleranceMm,
            Verdict = reading.Verdict.ToWire(),
            ContactSpreadMm = reading.ContactSpreadMm,
        };
        if (reading.LiftAtNominalMm is { } nominal)
        {
            wire.LiftAtNominalMm = nominal;
        }

        if (reading.ShoulderAngle is { } shoulder)
        {
            wire.ShoulderAngleDeg = shoulder.Degrees;
        }

        wire.Contacts.AddRange(reading.Contacts.Select(contact => ToWire(contact, toDrawing)));
        wire.NearMisses.AddRange(reading.NearMisses.Select(contact => ToWire(contact, toDrawing)));
        return wire;
    }

    private static Wire.Contact ToWire(Contact contact, RigidMotion toDrawing) =>
        new()
        {
            At = toDrawing.Apply(contact.At).ToWire(),
            AtKnife = contact.At.ToWire(),
            NormalDeg = contact.Normal.Direction.Degrees,
            GapMm = contact.GapMm,
            BladeFace = contact.BladeFace.ToWire(),
            SpringFace = contact.SpringFace.ToWire(),
            LengthMm = contact.LengthMm,
            LiftPerDepth = contact.LiftPerDepth,
        };
}
