using System.Collections.Immutable;
using Flushback.Geometry;
using MathNet.Numerics.Integration;

namespace Flushback.Mechanism.Handle.Beams;

/// <summary>
/// The backspring as a beam: held by both pins, free to turn on each, bent by its overhanging nose. Of unit modulus and
/// unit width; knife frame, spring as drawn.
/// </summary>
/// <remarks>
/// Both spans bend. The nose is taken as stiff from a stated place on. Straight springs and slightly curved ones: the
/// depth and the length are taken along the centreline, the bending moment by lengths along the handle.
/// </remarks>
public sealed class SpringBeam
{
    // Sections are smooth between two breakpoints; eight points a millimetre or two leave no error that shows in a double.
    private const int PointsPerPanel = 8;
    private const double LongestPanelMm = 1.5;

    private static readonly GaussLegendreRule _rule = new(-1, 1, PointsPerPanel);

    private readonly Outline _spring;
    private readonly SectionCutter _cutter;
    private readonly Circle[] _holes;

    /// <summary>Takes a spring for a beam.</summary>
    /// <param name="spring">The spring's outline.</param>
    /// <param name="centrePin">The pin next to the nose; its hole weakens the spring.</param>
    /// <param name="rearPin">The pin at the rear end, behind the centre pin; its hole weakens the spring.</param>
    /// <param name="stiffFromXMm">Where along the handle the stiff nose begins, in front of the centre pin.</param>
    /// <param name="addedDepthMm">Depth added at the back all along, to see what it changes.</param>
    /// <exception cref="ArgumentException">The pins and the nose are not in this order, or there is no spring somewhere between.</exception>
    public SpringBeam(Outline spring, Circle centrePin, Circle rearPin, double stiffFromXMm, double addedDepthMm = 0)
    {
        if (rearPin.Centre.X >= centrePin.Centre.X || centrePin.Centre.X >= stiffFromXMm)
        {
            throw new ArgumentException("The rear pin, the centre pin and the stiff nose must follow in this order.");
        }

        _spring = spring;
        _holes = [centrePin, rearPin];
        _cutter = new SectionCutter(spring, addedDepthMm, _holes);
        CentrePin = centrePin.Centre;
        RearPin = rearPin.Centre;
        StiffFromXMm = stiffFromXMm;
        RearStations = StationsBetween(RearPin.X, CentrePin.X);
        FrontStations = StationsBetween(CentrePin.X, stiffFromXMm);
        Front = Sum(FrontStations, place => new UnitMoments(stiffFromXMm - place, 1));
        Rear = Sum(RearStations, place => new UnitMoments(OverhangMm, 1) * ShareBehind(place));
    }

    /// <summary>Centre of the centre pin.</summary>
    public Point CentrePin { get; }

    /// <summary>Centre of the rear pin.</summary>
    public Point RearPin { get; }

    /// <summary>Where the stiff nose begins.</summary>
    public double StiffFromXMm { get; }

    /// <summary>From the centre pin to where the stiff nose begins.</summary>
    public double OverhangMm => StiffFromXMm - CentrePin.X;

    /// <summary>Between the pins.</summary>
    public double SpanMm => CentrePin.X - RearPin.X;

    /// <summary>From the rear pin to the centre pin.</summary>
    public ImmutableArray<BeamStation> RearStations { get; }

    /// <summary>From the centre pin to the stiff nose.</summary>
    public ImmutableArray<BeamStation> FrontStations { get; }

    /// <summary>Least depth of metal anywhere along it: beside the holes, and over and under them.</summary>
    public double LeastMetalMm =>
        Stations.Min(s =>
            s.Section.HoleMm > 0 ? Math.Min(s.Section.OverHoleMm, s.Section.UnderHoleMm) : s.Section.DepthMm
        );

    /// <summary>Least depth of metal that can be taken from its back: beside the holes, and over them.</summary>
    public double LeastMetalAtBackMm =>
        Stations.Min(s => s.Section.HoleMm > 0 ? s.Section.OverHoleMm : s.Section.DepthMm);

    /// <summary>From the rear pin to the stiff nose.</summary>
    public IEnumerable<BeamStation> Stations => RearStations.Concat(FrontStations);

    /// <summary>What the overhang gives, were it clamped at the centre pin.</summary>
    public NoseFlexibility Front { get; }

    /// <summary>What the turn of the spring over the centre pin adds.</summary>
    public NoseFlexibility Rear { get; }

    /// <summary>What the whole spring gives.</summary>
    public NoseFlexibility Whole => Front + Rear;

    /// <summary>Bending moment at a place along the handle under a load on the nose, in N mm; positive pulls at the underside.</summary>
    public double MomentAt(double xMm, NoseLoad load) =>
        xMm >= CentrePin.X
            ? load.MomentNmm + (load.ForceN * (StiffFromXMm - xMm))
            : (load.MomentNmm + (load.ForceN * OverhangMm)) * ShareBehind(xMm);

    /// <summary>The section at a place along the handle.</summary>
    public BeamSection SectionAt(double xMm) => _cutter.At(xMm).Section;

    // The rear pin holds with a single force, so the moment falls off evenly behind the centre pin.
    private double ShareBehind(double xMm) => (xMm - RearPin.X) / SpanMm;

    private static NoseFlexibility Sum(ImmutableArray<BeamStation> stations, Func<double, UnitMoments> unitMoments)
    {
        NoseFlexibility sum = default;
        foreach (BeamStation station in stations)
        {
            UnitMoments m = unitMoments(station.Centre.X);
            double bend = station.WeightMm / station.Section.SecondMomentMm3;
            sum += new NoseFlexibility(
                m.OfForce * m.OfForce * bend,
                m.OfForce * m.OfMoment * bend,
                m.OfMoment * m.OfMoment * bend
            );
        }

        return sum;
    }

    private ImmutableArray<BeamStation> StationsBetween(double fromMm, double toMm)
    {
        ImmutableArray<BeamStation>.Builder stations = ImmutableArray.CreateBuilder<BeamStation>();
        List<double> breaks = BreaksBetween(fromMm, toMm);
        for (int i = 1; i < breaks.Count; i++)
        {
            AddPanels(stations, breaks[i - 1], breaks[i]);
        }

        return stations.ToImmutable();
    }

    private List<double> BreaksBetween(double fromMm, double toMm)
    {
        IEnumerable<double> corners = _spring.Edges.Select(edge => edge.Start.X);
        IEnumerable<double> holeEdges = _holes.SelectMany(hole =>
            new[] { hole.Centre.X - hole.RadiusMm, hole.Centre.X + hole.RadiusMm }
        );
        return
        [
            .. corners
                .Concat(holeEdges)
                .Where(x => x > fromMm && x < toMm)
                .Append(fromMm)
                .Append(toMm)
                .Distinct()
                .Order(),
        ];
    }

    private void AddPanels(ImmutableArray<BeamStation>.Builder stations, double fromMm, double toMm)
    {
        double middle = (fromMm + toMm) / 2;
        Circle? hole = _holes.Where(h => Math.Abs(middle - h.Centre.X) < h.RadiusMm).Cast<Circle?>().FirstOrDefault();
        int panels = (int)Math.Ceiling((toMm - fromMm) / LongestPanelMm);
        for (int i = 0; i < panels; i++)
        {
            for (int k = 0; k < PointsPerPanel; k++)
            {
                double share = (i + ((1 + _rule.GetAbscissa(k)) / 2)) / panels;
                double weight = _rule.GetWeight(k) / 2 / panels;
                (double x, double dx) = hole is { } round
                    ? AcrossHole(round, fromMm, toMm, share)
                    : (fromMm + (share * (toMm - fromMm)), toMm - fromMm);
                (Point centre, BeamSection section, double stretch) = _cutter.At(x);
                stations.Add(new BeamStation(centre, section, weight * dx * stretch));
            }
        }
    }

    /// <summary>A place across a hole by its angle on the circle, where the hole's height is smooth up to its edges.</summary>
    private static (double X, double Slope) AcrossHole(Circle hole, double fromMm, double toMm, double share)
    {
        double first = Math.Asin(Math.Clamp((fromMm - hole.Centre.X) / hole.RadiusMm, -1, 1));
        double last = Math.Asin(Math.Clamp((toMm - hole.Centre.X) / hole.RadiusMm, -1, 1));
        (double sin, double cos) = Math.SinCos(first + (share * (last - first)));
        return (hole.Centre.X + (hole.RadiusMm * sin), hole.RadiusMm * cos * (last - first));
    }

    /// <summary>Bending moments of a unit force and a unit moment on the nose.</summary>
    private readonly record struct UnitMoments(double OfForce, double OfMoment)
    {
        public static UnitMoments operator *(UnitMoments moments, double factor) =>
            new(moments.OfForce * factor, moments.OfMoment * factor);
    }
}
