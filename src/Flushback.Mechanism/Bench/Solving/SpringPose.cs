using Flushback.Geometry;
using Flushback.Geometry.Polar;

namespace Flushback.Mechanism.Bench.Solving;

/// <summary>Where the spring can lie at one blade angle.</summary>
/// <remarks>Angles in radians in the knife frame; the spring rotation counts from where the spring is drawn.</remarks>
public readonly record struct SpringPose
{
    internal SpringPose(Angle bladeAngle, double lowest, double highest, bool blocked, in Feature support)
    {
        BladeAngle = bladeAngle;
        Lowest = new Angle(lowest);
        Highest = new Angle(highest);
        IsPossible = !blocked && lowest <= highest && double.IsFinite(lowest);
        Support = support;
    }

    /// <summary>Blade angle, clockwise from open.</summary>
    public Angle BladeAngle { get; }

    /// <summary>Lowest spring rotation free of overlap: where the spring lies, pressed onto the tang.</summary>
    public Angle Lowest { get; }

    /// <summary>Highest spring rotation below an overhanging shoulder or above the blade behind the centre pin; infinite if free.</summary>
    public Angle Highest { get; }

    /// <summary>False when nothing fits: past the open stop, or with the blade in the spring's tail.</summary>
    public bool IsPossible { get; }

    /// <summary>What carries the spring.</summary>
    public Feature Support { get; }

    /// <summary>Turn of the spring for a turn of the blade, d(spring rotation) / d(blade angle).</summary>
    /// <remarks>The two bodies have the same velocity along the common normal at the touching point.</remarks>
    public double Slope => Support.Slope;

    /// <summary>A touching pair: a place, a normal, and which edges and vertices meet there.</summary>
    public readonly record struct Feature
    {
        internal Feature(in Touch touch, in RadialPiece blade, in RadialPiece spring, Point centrePin)
        {
            Vector arm = Vector.FromDirection(new Angle(touch.BladePolar)) * touch.RadiusMm;
            At = centrePin + arm;
            BladeEdge = blade.EdgeIndex;
            SpringEdge = spring.EdgeIndex;
            BladeVertex = VertexAt(blade, touch.RadiusMm);
            SpringVertex = VertexAt(spring, touch.RadiusMm);

            // At a vertex of the blade the spring's face gives the normal, and the other way round.
            double springPolar = touch.BladePolar - touch.Rotation;
            Normal =
                BladeVertex >= 0
                    ? -spring.OutwardNormalAt(touch.RadiusMm, springPolar).Rotated(new Angle(touch.Rotation))
                    : blade.OutwardNormalAt(touch.RadiusMm, touch.BladePolar);
            SpringLever = arm.Cross(Normal);
            BladeLever = (At - Point.Origin).Cross(Normal);
        }

        /// <summary>Where they touch, in the knife frame.</summary>
        public Point At { get; }

        /// <summary>Unit normal from blade to spring.</summary>
        public Vector Normal { get; }

        /// <summary>Edge of the blade.</summary>
        public int BladeEdge { get; }

        /// <summary>Vertex of the blade, or -1 inside an edge.</summary>
        public int BladeVertex { get; }

        /// <summary>Edge of the spring.</summary>
        public int SpringEdge { get; }

        /// <summary>Vertex of the spring, or -1 inside an edge.</summary>
        public int SpringVertex { get; }

        /// <summary>Lever of the common normal about the centre pin, in millimetres; positive when it lifts the nose.</summary>
        public double SpringLever { get; }

        /// <summary>Lever of the common normal about the pivot, in millimetres; positive in front of the pivot's foot.</summary>
        public double BladeLever { get; }

        /// <summary>Turn of the spring for a turn of the blade.</summary>
        public double Slope => -BladeLever / SpringLever;

        /// <summary>True when the same edge or vertex of the blade meets the same edge or vertex of the spring.</summary>
        internal bool IsSamePairAs(in Feature other) =>
            BladeVertex == other.BladeVertex
            && SpringVertex == other.SpringVertex
            && (BladeVertex >= 0 || BladeEdge == other.BladeEdge)
            && (SpringVertex >= 0 || SpringEdge == other.SpringEdge);

        private static int VertexAt(in RadialPiece piece, double radiusMm)
        {
            if (radiusMm == piece.InnerMm)
            {
                return piece.Inner.Vertex;
            }

            return radiusMm == piece.OuterMm ? piece.Outer.Vertex : -1;
        }
    }
}
