using Flushback.Geometry;
using Flushback.Mechanism.Knives;
using Flushback.Patterns;
using Flushback.Patterns.Parameters;
using Flushback.Reports.Pictures;

namespace Flushback.Reports.Tests.Parameters;

/// <summary>Where the letters of each picture point, taken from the drawing itself.</summary>
internal sealed class ParameterPictures(DrawnPattern pattern)
{
    private readonly PatternParameters _d = pattern.Dimensions;
    private readonly Knife _knife = pattern.Knife;

    public IReadOnlyList<ParameterPicture> All => [Handle(), Tang(), Spring(), Blade()];

    private double LineY => pattern.HandleLine[0].Start.Y;

    private Point Centre => _knife.CentrePin.Centre;

    private Point Rear => _knife.RearPin!.Value.Centre;

    private double FrontX => pattern.Handle.Finished.Bounds.MaxX;

    private double ButtX => pattern.Handle.Finished.Bounds.MinX;

    private Point Tip => _knife.Blade.Edges.Select(edge => edge.Start).MaxBy(point => point.X);

    private ParameterPicture Handle()
    {
        Box handle = pattern.Handle.Finished.Bounds;
        double middle = (FrontX + ButtX) / 2;
        double low = LowerLine(middle);
        Outline closed = _knife.Blade.Transformed(Knife.BladeAt(Angle.FromDegrees(180)));
        Point closedTip = closed.Edges.Select(edge => edge.Start).MinBy(point => point.X);
        return new ParameterPicture(
            "handle",
            "Handle and pins, the closed blade dashed",
            new Box(ButtX - 8, handle.MinY - 17, Tip.X + 4, LineY + 19),
            [
                (Ink.Handle, pattern.Handle.Finished),
                (Ink.Spring, _knife.Spring),
                (Ink.Blade, _knife.Blade),
                (Ink.Phantom, closed),
                .. pattern.Handle.Holes.Select(hole => (Ink.Pin, OutlineOf(hole.Circle))),
            ],
            [
                Across("handle.closed_length_mm", ButtX, FrontX, handle.MinY, -9),
                Across("handle.overall_length_mm", ButtX, Tip.X, handle.MinY, -14),
                Across("handle.front_mm", 0, FrontX, 0, -handle.HeightMm - 1),
                Upright("handle.height_mm", middle, low, LineY, 0),
                new Leader(new Point(ButtX + 6, LowerLine(ButtX + 6)), new Vector(-4, -5), "handle.taper_mm"),
                new Leader(new Point(middle - 12, LowerLine(middle - 12)), new Vector(0, -5), "handle.swell_mm"),
                new Leader(new Point(Rear.X, LineY), new Vector(-6, 5), "handle.back_drop_mm"),
                new Leader(closedTip, new Vector(5, 1.5), "handle.tip_depth_mm"),
                new Leader(new Point(FrontX - 1, handle.MinY + 2), new Vector(7, -3), "handle.well_clearance_mm"),
                new Leader(new Point(0, 0), new Vector(9, -3.5), "pins.pivot_diameter_mm"),
                new Leader(Centre, new Vector(4, -4), "pins.centre_diameter_mm"),
                new Leader(Rear, new Vector(4, -4), "pins.rear_diameter_mm"),
                Across("pins.centre_behind_mm", Centre.X, 0, LineY, 8),
                Across("pins.rear_behind_mm", Rear.X, 0, LineY, 13),
                Upright("pins.centre_depth_mm", Centre.X, Centre.Y, LineY, -4),
                Upright("pins.rear_depth_mm", Rear.X, Rear.Y, LineY, -4),
                new Leader(new Point(Centre.X, LineY - 0.4), new Vector(5, 4), "pins.wall_mm"),
                new Leader(
                    new Point(0, LineY),
                    new Vector(3, 5),
                    "readings.open_mm",
                    "readings.half_stop_mm",
                    "readings.closed_mm"
                ),
                new Leader(
                    new Point(Tip.X - 20, MiddleOf(BladeFace.Spine).Y),
                    new Vector(-4, 6),
                    "readings.half_stop_rest_deg",
                    "readings.closed_rest_deg"
                ),
            ]
        );
    }

    private ParameterPicture Tang()
    {
        double flat = _d.Tang.HeightMm;
        Point shoulderFoot = EndOf(BladeFace.Shoulder, highest: false);
        Point shoulderTop = EndOf(BladeFace.Shoulder, highest: true);
        double rear = _knife.Blade.Bounds.MinX;
        Point kick = LowestOf(BladeFace.Kick);
        double edgeY = kick.Y + _d.Tang.KickHeightMm!.Value;
        return new ParameterPicture(
            "tang",
            "Tang of a blade with a half stop, open",
            new Box(rear - 4.5, kick.Y - 4, shoulderTop.X + 8, shoulderTop.Y + 3.4),
            [(Ink.Blade, _knife.Blade), (Ink.Pin, OutlineOf(pattern.Blade.Holes[0].Circle))],
            [
                Upright("tang.height_mm", 0, 0, flat, 0),
                Across("tang.length_mm", rear, shoulderFoot.X, flat, 3.2),
                new Leader(MiddleOf(BladeFace.HalfStopFace), new Vector(2.6, 1.4), "tang.run_rise_mm"),
                Upright("tang.open_flat_depth_mm", shoulderTop.X, shoulderFoot.Y, shoulderTop.Y, 2.4),
                new Leader(new Point(-3.2, flat), new Vector(-0.6, 1.6), "tang.open_flat_tilt_deg"),
                new Leader(MiddleOf(BladeFace.Shoulder), new Vector(-1.8, 0.2), "tang.shoulder_deg"),
                new Leader(shoulderTop, new Vector(0.6, 1.8), "tang.shoulder_radius_mm"),
                new Leader(MiddleOf(BladeFace.NotchCorner), new Vector(1.6, -1.6), "tang.notch_radius_mm"),
                new Leader(MiddleOf(BladeFace.OpenCorner), new Vector(-1.5, 1.3), "tang.open_corner_radius_mm"),
                new Leader(MiddleOf(BladeFace.ClosedCorner), new Vector(-1.5, -1.3), "tang.closed_corner_radius_mm"),
                new Leader(new Point(1.6, flat - 0.05), new Vector(0.4, 1.6), "tang.open_relief_mm"),
                new Leader(
                    MiddleOf(BladeFace.HalfStopFace) + new Vector(0, -1.2),
                    new Vector(-2, -0.6),
                    "tang.half_stop_relief_mm"
                ),
                new Leader(MiddleOf(BladeFace.ClosedFace), new Vector(-0.6, -1.7), "tang.closed_relief_mm"),
                new Leader(
                    EndOf(BladeFace.HalfStopFace, highest: true) - new Vector(0, 0.25),
                    new Vector(-2, -0.4),
                    "tang.relief_land_mm"
                ),
                Upright("tang.kick_height_mm", kick.X, kick.Y, edgeY, 4.6),
                Across("tang.kick_place_mm", 0, kick.X, kick.Y, -2.6),
                new Leader(kick, new Vector(-1.4, -1.2), "tang.kick_radius_mm"),
            ]
        );
    }

    private ParameterPicture Spring()
    {
        Box spring = _knife.Spring.Bounds;
        double under = _d.Tang.HeightMm;
        Point nose = MiddleOf(SpringFace.NoseCorner);
        return new ParameterPicture(
            "spring",
            "Spring as it lies on the open flat",
            new Box(spring.MinX - 5, spring.MinY - 11, spring.MaxX + 8, spring.MaxY + 8),
            [(Ink.Spring, _knife.Spring), .. pattern.Spring.Holes.Select(hole => (Ink.Pin, OutlineOf(hole.Circle)))],
            [
                Upright("spring.nose_depth_mm", 0, under, LineY, 0),
                Upright(
                    "spring.centre_depth_mm",
                    Centre.X,
                    Centre.Y - (_d.Spring.CentreDepthMm!.Value / 2),
                    LineY,
                    -3.5
                ),
                Upright("spring.rear_depth_mm", Rear.X, Rear.Y - (_d.Spring.RearDepthMm!.Value / 2), LineY, -3.5),
                new Leader(MiddleOf(SpringFace.EndFace), new Vector(4, 1), "spring.end_face_deg"),
                new Leader(nose, new Vector(3.5, -3.5), "spring.nose_radius_mm"),
                Across("spring.pad_end_mm", -_d.Spring.PadEndMm!.Value, 0, under, -6),
                new Leader(
                    new Point(
                        (Centre.X - _d.Spring.PadEndMm!.Value) / 2,
                        UndersideAt((Centre.X - _d.Spring.PadEndMm!.Value) / 2)
                    ),
                    new Vector(0, -4),
                    "spring.belly_relief_mm"
                ),
                new Leader(new Point(-5, spring.MaxY), new Vector(0, 4.5), "spring.front_stock_mm"),
                new Leader(new Point((Centre.X + Rear.X) / 2, LineY), new Vector(0, 4.5), "spring.rear_stock_mm"),
                new Leader(new Point(2, under), new Vector(0, -8), "spring.preload_mm"),
                new Leader(new Point(-18, Centre.Y), new Vector(0, 7), "spring.width_mm"),
                new Leader(new Point(-26, spring.MaxY - 0.1), new Vector(0, 4.5), "stock.spring_mm"),
            ]
        );
    }

    private ParameterPicture Blade()
    {
        Box blade = _knife.Blade.Bounds;
        Point kick = LowestOf(BladeFace.Kick);
        double edgeY = kick.Y + _d.Tang.KickHeightMm!.Value;
        double ricassoEnd = kick.X + _d.Blade.RicassoMm;
        double nick = _d.Blade.NickPlaceMm!.Value;
        Box mark = pattern.Blade.Marks.First(one => one.Kind == MarkKind.NailNick).Outline.Bounds;
        return new ParameterPicture(
            "blade",
            "Blade, a clip point",
            new Box(blade.MinX - 3, blade.MinY - 17, blade.MaxX + 7, blade.MaxY + 17),
            [
                (Ink.Blade, _knife.Blade),
                (Ink.Pin, OutlineOf(pattern.Blade.Holes[0].Circle)),
                .. pattern.Blade.Marks.Select(one => (Ink.Pin, one.Outline)),
            ],
            [
                Across("blade.length_mm", FrontX, Tip.X, blade.MinY, -13),
                Upright("blade.width_mm", ricassoEnd + 12, edgeY, blade.MaxY, 0),
                Across("blade.point_mm", Tip.X - _d.Blade.PointMm!.Value, Tip.X, blade.MaxY, 6),
                Across("blade.sweep_mm", Tip.X - _d.Blade.SweepMm!.Value, Tip.X, blade.MinY, -7),
                Across("blade.ricasso_mm", kick.X, ricassoEnd, kick.Y, -4),
                new Leader(new Point(ricassoEnd - 0.6, edgeY + 0.6), new Vector(5, -5.5), "blade.choil_radius_mm"),
                Across("blade.nick_place_mm", 0, nick, blade.MaxY, 12.5),
                Across("blade.nick_length_mm", mark.MinX, mark.MaxX, mark.MaxY, -5.5),
                Upright("blade.nick_width_mm", mark.MinX, mark.MinY, mark.MaxY, -4),
                new Leader(
                    _knife.Blade.Edges[LongestOf(BladeFace.Edge)].PointAt(0.4),
                    new Vector(-3, -5),
                    "stock.blade_mm",
                    "stock.kerf_mm"
                ),
            ]
        );
    }

    private static Span Across(string path, double fromX, double toX, double y, double asideMm) =>
        new(path, new Point(fromX, y), new Point(toX, y), new Vector(0, asideMm));

    private static Span Upright(string path, double x, double fromY, double toY, double asideMm) =>
        new(path, new Point(x, fromY), new Point(x, toY), new Vector(asideMm, 0));

    private double LowerLine(double x) => Crossings(pattern.Handle.Finished, x).Min();

    private double UndersideAt(double x) => Crossings(_knife.Spring, x).Min();

    // Heights of an outline at x, to a pixel of the picture: the nearest of many points along it.
    private static IEnumerable<double> Crossings(Outline outline, double x) =>
        outline
            .Edges.SelectMany(edge => Enumerable.Range(0, 201).Select(i => edge.PointAt(i / 200.0)))
            .Where(point => Math.Abs(point.X - x) < 1)
            .Select(point => point.Y);

    private Point MiddleOf(BladeFace face) => _knife.Blade.Edges[LongestOf(face)].PointAt(0.5);

    private Point MiddleOf(SpringFace face)
    {
        int longest = Enumerable
            .Range(0, _knife.SpringFaces.Length)
            .Where(i => _knife.SpringFaces[i] == face)
            .MaxBy(i => _knife.Spring.Edges[i].LengthMm);
        return _knife.Spring.Edges[longest].PointAt(0.5);
    }

    private int LongestOf(BladeFace face) =>
        Enumerable
            .Range(0, _knife.BladeFaces.Length)
            .Where(i => _knife.BladeFaces[i] == face)
            .MaxBy(i => _knife.Blade.Edges[i].LengthMm);

    private Point EndOf(BladeFace face, bool highest)
    {
        Point[] ends =
        [
            .. Enumerable
                .Range(0, _knife.BladeFaces.Length)
                .Where(i => _knife.BladeFaces[i] == face)
                .SelectMany(i => new[] { _knife.Blade.Edges[i].Start, _knife.Blade.Edges[i].End }),
        ];
        return highest ? ends.MaxBy(point => point.Y) : ends.MinBy(point => point.Y);
    }

    private Point LowestOf(BladeFace face) =>
        Enumerable
            .Range(0, _knife.BladeFaces.Length)
            .Where(i => _knife.BladeFaces[i] == face)
            .SelectMany(i => Enumerable.Range(0, 101).Select(step => _knife.Blade.Edges[i].PointAt(step / 100.0)))
            .MinBy(point => point.Y);

    private static Outline OutlineOf(Circle circle)
    {
        Vector right = new(circle.RadiusMm, 0);
        return Outline.FromVertices([new Vertex(circle.Centre + right, 1), new Vertex(circle.Centre - right, 1)]);
    }
}
