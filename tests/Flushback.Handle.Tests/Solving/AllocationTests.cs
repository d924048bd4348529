using Flushback.Geometry;
using Flushback.Mechanism.Handle.Solving;

namespace Flushback.Handle.Tests.Solving;

public class AllocationTests
{
    public static TheoryData<int> Knives => [.. TenKnives.Indices];

    [Theory]
    [MemberData(nameof(Knives))]
    public void A_sweep_allocates_nothing_however_many_angles_it_has(int knife)
    {
        HandleCase handle = new(TenKnives.All[knife]);

        // Buffers grow to what the knife asks for in the first sweep.
        Sweep(handle, 3610);
        Assert.Equal(0, Allocated(handle, 361));
        Assert.Equal(0, Allocated(handle, 3610));
    }

    private static long Allocated(HandleCase handle, int angles)
    {
        long before = GC.GetAllocatedBytesForCurrentThread();
        Sweep(handle, angles);
        return GC.GetAllocatedBytesForCurrentThread() - before;
    }

    private static void Sweep(HandleCase handle, int angles)
    {
        NoseState state = handle.Track.At(Angle.FromDegrees(178));
        for (int i = 1; i < angles; i++)
        {
            state = handle.Solver.At(Angle.FromDegrees(178 - (178.0 * i / (angles - 1))), state.Pose);
        }
    }
}
