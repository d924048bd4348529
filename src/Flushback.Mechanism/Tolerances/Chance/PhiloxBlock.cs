namespace Flushback.Mechanism.Tolerances.Chance;

/// <summary>Four random words for a counter and a key: Philox4x32-10, a generator that keeps no state.</summary>
/// <remarks>
/// J. K. Salmon, M. A. Moraes, R. O. Dror, D. E. Shaw, "Parallel random numbers: as easy as 1, 2, 3", SC11 (2011). Any
/// block can be had by itself, so that what a part draws does not depend on who draws the parts before it.
/// </remarks>
internal readonly record struct PhiloxBlock(uint A, uint B, uint C, uint D)
{
    private const int Rounds = 10;
    private const ulong FirstFactor = 0xD2511F53;
    private const ulong SecondFactor = 0xCD9E8D57;
    private const uint FirstStep = 0x9E3779B9;
    private const uint SecondStep = 0xBB67AE85;

    /// <summary>The block of a counter under a key.</summary>
    public static PhiloxBlock Of(PhiloxBlock counter, uint firstKey, uint secondKey)
    {
        PhiloxBlock block = counter;
        for (int round = 0; round < Rounds; round++)
        {
            ulong first = FirstFactor * block.A;
            ulong second = SecondFactor * block.C;
            block = new PhiloxBlock(
                (uint)(second >> 32) ^ block.B ^ firstKey,
                (uint)second,
                (uint)(first >> 32) ^ block.D ^ secondKey,
                (uint)first
            );
            firstKey += FirstStep;
            secondKey += SecondStep;
        }

        return block;
    }
}
