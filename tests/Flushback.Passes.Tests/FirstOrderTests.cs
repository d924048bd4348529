using Flushback.Catalogue.Designs;
using Flushback.Geometry;
using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Knives;
using Flushback.Mechanism.Passes;

namespace Flushback.Passes.Tests;

/// <summary>
/// Small slices against the closed form of a blade that stands on a straight underside with two contacts.
/// </summary>
/// <remarks>
/// The line through both contacts lies along the underside. Taking d1 and d2 off moves it, in the blade, by d at the foot
/// of the perpendicular from the pivot, d = w d1 + (1 - w) d2, and turns it by (d2 - d1) over the distance of the
/// contacts. The underside follows by a turn of d over the distance between that foot and the foot of the perpendicular
/// from the centre pin (rigid bodies, elementary geometry); the blade rests where both turns are made good.
/// </remarks>
public sealed class FirstOrderTests
{
    private const int Knives = 40;
    private const double DepthMm = 1e-4;

    // What is left out is of the order of the depth over the size of the tang, some millimetres.
    private const double Relative = 1e-3;

    [Theory]
    [InlineData(1, 1)]
    [InlineData(1, 0)]
    [InlineData(0, 1)]
    [InlineData(1, 0.5)]
    public void A_small_slice_moves_lift_and_rest_as_the_depth_at_the_foot_of_the_perpendicular_says(
        double front,
        double rear
    )
    {
        int seen = 0;
        for (int seed = 1; seen < Knives; seed++)
        {
            Assert.True(seed < 40 * Knives, $"Only {seen} knives stand on two contacts.");
            PassCase before = new(KnifeGenerator.FromSeed(seed));
            bool stands = false;
            foreach (
                (Stop stop, Site face) in new[]
                {
                    (Stop.HalfStop, PassCase.HalfStopFace),
                    (Stop.Closed, PassCase.ClosedFace),
                }
            )
            {
                if (Standing.Of(before, stop, face) is not { } standing)
                {
                    continue;
                }

                stands = true;
                PassCase after = before.After(PassCase.Slice(face, front * DepthMm, rear * DepthMm));
                StopReading was = before.Readings.At(stop)!;
                StopReading now = after.Readings.At(stop)!;
                double lift = before.Knife.LiftMm(was.SpringRotation, now.SpringRotation);
                double turn = (now.RestAngle - was.RestAngle).Radians;
                (double expectedLift, double expectedTurn) = standing.Change(front * DepthMm, rear * DepthMm);
                Assert.Equal(expectedLift, lift, Relative * DepthMm);
                Assert.Equal(expectedTurn, turn, Relative * DepthMm);
            }

            seen += stands ? 1 : 0;
        }
    }

    /// <summary>A stop that stands with two contacts on a straight underside.</summary>
    private sealed record Standing(Knife Knife, Point Front, Point Rear, Vector Up, double Rotation)
    {
        private const double LeastSpreadMm = 3;

        public static Standing? Of(PassCase knife, Stop stop, Site face)
        {
            if (knife.Readings.At(stop) is not { Rests: true } reading)
            {
                return null;
            }

            Point[] ends = [.. reading.Contacts.SelectMany(contact => contact.Ends)];
            bool straight =
                ends.Length >= 2
                && reading.Contacts.All(contact => contact.SpringFace == SpringFace.Underside)
                && reading.Contacts.All(contact => Math.Abs(contact.Normal.Cross(reading.Contacts[0].Normal)) < 1e-7);
            if (!straight || DepthPlaces.Of(knife.Knife, knife.Readings, face) is not { } places)
            {
                return null;
            }

            RigidMotion turned = Flushback.Mechanism.Knives.Knife.BladeAt(reading.RestAngle);
            Point front = turned.Apply(places.Front.At);
            Point rear = turned.Apply(places.Rear.At);
            Vector up = reading.Contacts[0].Normal;
            bool along = Math.Abs((front - rear).Dot(up)) < 1e-6 && places.Front.IsContact && places.Rear.IsContact;
            return along && front.X - rear.X > LeastSpreadMm
                ? new Standing(knife.Knife, front, rear, up, reading.SpringRotation.Radians)
                : null;
        }

        public (double LiftMm, double Turn) Change(double frontMm, double rearMm)
        {
            Vector along = (Front - Rear).Normalized;
            double footOfPivot = (Point.Origin - Rear).Dot(along);
            double footOfPin = (Knife.CentrePin.Centre - Rear).Dot(along);
            double spread = Front.DistanceTo(Rear);
            double weight = footOfPivot / spread;
            double depth = (weight * frontMm) + ((1 - weight) * rearMm);
            double spring = -depth / (footOfPivot - footOfPin);
            Vector arm = (Knife.DialPoint - Knife.CentrePin.Centre).Rotated(new Angle(Rotation));

            // More off the rear turns the line in the blade counter-clockwise, so the blade goes on clockwise.
            double inBlade = (rearMm - frontMm) / spread;
            return (arm.X * spring, inBlade - spring);
        }
    }
}
