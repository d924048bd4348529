using System.Collections.Immutable;
using Flushback.Mechanism.Handle.Beams;

namespace Flushback.Mechanism.Handle;

/// <summary>Bending stress along a spring for any load on its nose.</summary>
/// <remarks>Nominal stress of the net section beside the pins' holes; no stress raiser is added there.</remarks>
internal sealed class StressLine
{
    private readonly SpringBeam _beam;
    private readonly double[] _modulusMm3;

    public StressLine(SpringBeam beam, double widthMm)
    {
        _beam = beam;

        // The centre pin itself is a station too: the bending moment peaks there.
        (double X, double Modulus)[] places =
        [
            .. beam
                .Stations.Select(s => (s.Centre.X, s.Section.LeastModulusMm2 * widthMm))
                .Append((beam.CentrePin.X, beam.SectionAt(beam.CentrePin.X).LeastModulusMm2 * widthMm))
                .OrderBy(place => place.Item1),
        ];
        XMm = [.. places.Select(place => place.X)];
        _modulusMm3 = [.. places.Select(place => place.Modulus)];
    }

    /// <summary>Places along the handle, from rear to front.</summary>
    public ImmutableArray<double> XMm { get; }

    /// <summary>Stress at one of the places in MPa; positive where the underside is pulled.</summary>
    public double At(int place, NoseLoad load) => _beam.MomentAt(XMm[place], load) / _modulusMm3[place];

    /// <summary>Greatest stress and where.</summary>
    public (double StressMpa, int Place) Peak(NoseLoad load)
    {
        (double peak, int at) = (0, 0);
        for (int i = 0; i < XMm.Length; i++)
        {
            double stress = Math.Abs(At(i, load));
            if (stress > peak)
            {
                (peak, at) = (stress, i);
            }
        }

        return (peak, at);
    }
}
