using Flushback.Catalogue.Referee;
using Flushback.Geometry;
using Flushback.Mechanism.Handle.Solving;

namespace Flushback.Handle.Tests.Solving;

/// <summary>
/// The least energy found the hard way: at each bow the lowest turn without overlap of flattened outlines by a polygon
/// library, and over the bows a golden section. No contact, normal or lever is known to it.
/// </summary>
public class BruteForceTests
{
    public static TheoryData<int, double> Cases
    {
        get
        {
            TheoryData<int, double> cases = [];
            foreach (int knife in TenKnives.Indices)
            {
                foreach (double degrees in new[] { 12.0, 60, 115, 165 })
                {
                    cases.Add(knife, degrees);
                }
            }

            return cases;
        }
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void The_pose_of_least_energy_is_the_one_found_by_trying(int knife, double degrees)
    {
        HandleCase handle = new(TenKnives.All[knife]);
        NoseState state = handle.Track.At(Angle.FromDegrees(degrees));
        NosePose tried = Least(handle, state.BladeAngle, state.Pose);

        Point pin = handle.Knife.CentrePin.Centre;
        Point dial = handle.Knife.DialPoint;
        Assert.Equal(tried.RiseOf(dial, pin), state.Pose.RiseOf(dial, pin), 1e-5);
        Close.To(handle.Nose.LoadAt(tried).ForceN, state.ForceN.Y, 5e-3);
        Close.To(handle.Nose.EnergyAt(tried), state.EnergyNmm, 1e-5);
    }

    private static NosePose Least(HandleCase handle, Angle bladeAngle, NosePose near)
    {
        const double reach = 0.02;
        double golden = (Math.Sqrt(5) - 1) / 2;

        // Off the middle, so that the answer is not where the search begins.
        double low = near.BowMm - reach;
        double high = near.BowMm + (1.3 * reach);
        NosePose inner = At(high - (golden * (high - low)));
        NosePose outer = At(low + (golden * (high - low)));
        while (high - low > 1e-5)
        {
            if (handle.Nose.EnergyAt(inner) < handle.Nose.EnergyAt(outer))
            {
                (high, outer) = (outer.BowMm, inner);
                inner = At(high - (golden * (high - low)));
            }
            else
            {
                (low, inner) = (inner.BowMm, outer);
                outer = At(low + (golden * (high - low)));
            }
        }

        return At((low + high) / 2);

        NosePose At(double bowMm)
        {
            Vector up = new(0, bowMm);
            BruteForceBench bench = new(
                handle.Knife.Blade,
                handle.Knife.Spring.Transformed(new RigidMotion(Angle.Zero, up)),
                handle.Knife.CentrePin.Centre + up,
                handle.Knife.DialPoint + up
            );
            return new NosePose(bench.PoseAt(bladeAngle, near.Turn).SpringRotation, bowMm);
        }
    }
}
