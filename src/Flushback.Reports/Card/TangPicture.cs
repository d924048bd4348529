using System.Collections.Immutable;
using Flushback.Geometry;
using Flushback.Mechanism.Knives;
using Flushback.Mechanism.Passes;
using Flushback.Reports.Pictures;
using Flushback.Reports.Print;
using Flushback.Reports.Sheets;
using Flushback.Reports.Wording;

namespace Flushback.Reports.Card;

/// <summary>The tang four times its size, exactly, with the metal to take off and the amounts where they count.</summary>
/// <remarks>
/// Metal to take off is often thinner than a line of the printer: it is filled, hatched outside along its border, and its
/// amounts stand beside it.
/// </remarks>
internal sealed class TangPicture
{
    /// <summary>Millimetres of paper to a millimetre of the tang.</summary>
    public const double Scale = 4;

    /// <summary>Width on paper.</summary>
    public const double WidthMm = 190;

    /// <summary>What the scale bar takes under the window.</summary>
    public const double BarStripMm = 9;

    /// <summary>Length of the scale bar on paper.</summary>
    public const double BarMm = 100;

    private const double WordsMm = 2.6;
    private const double CaptionMm = 2.8;

    // Room for the amounts around the tang.
    private const double AroundMm = 15;

    private const double LeaderMm = 6;
    private const double GapMm = 1;
    private const double HatchEveryMm = 0.9;
    private const double HatchMm = 2.2;

    // Cosine below which a hatch runs along the border instead of out of it.
    private const double AlongBorder = 0.4;

    // Metal thinner than this on the tang is none.
    private const double NothingMm = 1e-4;

    private readonly Simulation _simulation;
    private readonly Outline _before;
    private readonly Outline _after;
    private readonly PaperView _view;
    private readonly bool _isWhole;

    private TangPicture(Simulation simulation, double heightMm)
    {
        _simulation = simulation;
        _before = simulation.Start.Placement.Knife.Blade;
        _after = simulation.End.Placement.Knife.Blade;
        HeightMm = heightMm;
        Window = new Box(0, BarStripMm, WidthMm, heightMm);
        Box tang = TangOf(simulation);
        _isWhole = tang.WidthMm * Scale <= Window.WidthMm && tang.HeightMm * Scale <= Window.HeightMm;
        _view = new PaperView((_isWhole ? tang : RemovedOf(simulation) ?? tang).Centre, Window.Centre, Scale);
    }

    /// <summary>Height on paper, with the scale bar.</summary>
    public double HeightMm { get; }

    /// <summary>Where the tang is seen, on paper.</summary>
    public Box Window { get; }

    /// <summary>Where the left end of the scale bar lies.</summary>
    public static Point BarStart { get; } = new(0.5, 3.5);

    /// <summary>The height that shows the whole tang with its amounts.</summary>
    public static double WantedHeightMm(Simulation simulation) =>
        (TangOf(simulation).HeightMm * Scale) + (2 * AroundMm) + BarStripMm;

    /// <summary>The picture of a simulation at a height on paper.</summary>
    public static TangPicture Of(Simulation simulation, double heightMm) => new(simulation, heightMm);

    /// <summary>Where a point of the tang (blade open) lies on paper.</summary>
    public Point At(Point point) => _view.Of(point);

    /// <summary>What is seen through the window only.</summary>
    public IEnumerable<CardMark> Inside()
    {
        yield return new CardArea(OnPaper(_after), CardInk.Metal);
        foreach (SimulationStep step in _simulation.Steps.Where(step => step.Removed!.Part == Part.Blade))
        {
            foreach (Outline region in step.Removed!.Regions)
            {
                yield return new CardArea(OnPaper(region), CardInk.Removed);
            }
        }

        foreach (CardMark mark in Hatch().Concat(Pivot()).Concat(FaceWords()).Concat(Amounts()))
        {
            yield return mark;
        }
    }

    /// <summary>The frame, what it shows, and the scale bar.</summary>
    public IEnumerable<CardMark> Around()
    {
        yield return new CardLine(BoxOf(Window), CardInk.Frame);
        yield return new CardWords(new Point(2, Window.MaxY - 4.5), Caption, CaptionMm);
        yield return new CardWords(
            new Point(WidthMm - 2, Window.MinY + 2.5),
            "towards the tip >",
            CaptionMm,
            TextAnchor.Right
        );
        yield return CardLine.Straight(BarStart, BarStart + new Vector(BarMm, 0), CardInk.Frame);
        for (int i = 0; i <= 10; i++)
        {
            Point foot = BarStart + new Vector(BarMm * i / 10, 0);
            yield return CardLine.Straight(foot, foot + new Vector(0, i % 5 == 0 ? 3 : 1.6), CardInk.Frame);
        }

        yield return new CardWords(
            BarStart + new Vector(BarMm + 2.5, 0),
            "100 mm on paper, 25 mm of the tang: print at full size",
            CaptionMm
        );
    }

    private string Caption =>
        (_isWhole ? "Tang" : "Part of the tang")
        + " with the blade open, 4:1"
        + (_simulation.Steps.IsEmpty ? "" : "; red comes off");

    /// <summary>Where metal comes off the blade; null where none does.</summary>
    private static Box? RemovedOf(Simulation simulation)
    {
        Box box = simulation
            .Steps.Where(step => step.Removed!.Part == Part.Blade)
            .SelectMany(step => step.Removed!.Regions)
            .Aggregate(Box.Empty, (all, region) => all.Including(region.Bounds));
        return box == Box.Empty ? null : box;
    }

    private static Box TangOf(Simulation simulation)
    {
        Knife knife = simulation.Start.Placement.Knife;
        return knife
            .Blade.Edges.Zip(knife.BladeFaces)
            .Where(named =>
                named.Second is not (BladeFace.Unknown or BladeFace.Ricasso or BladeFace.Edge or BladeFace.Spine)
            )
            .Aggregate(
                new Circle(Point.Origin, knife.PivotRadiusMm) is var pivot
                    ? Box.Empty.Including(pivot.Centre).Grown(pivot.RadiusMm)
                    : Box.Empty,
                (box, named) => box.Including(named.First.Bounds)
            );
    }

    private ImmutableArray<Edge> OnPaper(Outline outline) => [.. outline.Edges.Select(_view.Of)];

    private IEnumerable<CardMark> Hatch()
    {
        foreach (Edge edge in _before.CounterClockwise().Edges)
        {
            int count = (int)Math.Ceiling(edge.LengthMm * Scale / HatchEveryMm);
            for (int i = 0; i < count; i++)
            {
                double fraction = (i + 0.5) / count;
                Point at = edge.PointAt(fraction);
                if (-_after.SignedDistanceMm(at) > NothingMm)
                {
                    Point foot = _view.Of(at);
                    yield return CardLine.Straight(
                        foot,
                        foot + (Aslant(edge.OutwardNormalAt(fraction)) * HatchMm),
                        CardInk.Hatch
                    );
                }
            }
        }
    }

    /// <summary>The direction of a hatch that leads outward; it rises to the right but where that would run along the border.</summary>
    private static Vector Aslant(Vector outward)
    {
        Vector rising = new Vector(1, 1).Normalized;
        Vector along = Math.Abs(rising.Dot(outward)) > AlongBorder ? rising : rising.Right;
        return along.Dot(outward) > 0 ? along : -along;
    }

    private IEnumerable<CardMark> Pivot()
    {
        Circle hole = _view.Of(new Circle(Point.Origin, _simulation.Start.Placement.Knife.PivotRadiusMm));
        Vector right = new(hole.RadiusMm, 0);
        Point east = hole.Centre + right;
        Point west = hole.Centre - right;
        yield return new CardArea([new Edge(east, west, 1), new Edge(west, east, 1)], CardInk.Pin);
        foreach (Vector arm in (Vector[])[right * 1.4, (right * 1.4).Left])
        {
            yield return CardLine.Straight(hole.Centre - arm, hole.Centre + arm, CardInk.Leader);
        }
    }

    /// <summary>The faces by their names, along them and inside the metal.</summary>
    private IEnumerable<CardMark> FaceWords()
    {
        Knife knife = _simulation.End.Placement.Knife;
        foreach (BladeFace face in (BladeFace[])[BladeFace.OpenFlat, BladeFace.HalfStopFace, BladeFace.ClosedFace])
        {
            Edge[] edges =
            [
                .. knife
                    .Blade.Edges.Zip(knife.BladeFaces)
                    .Where(named => named.Second == face)
                    .Select(named => named.First),
            ];
            if (edges.Length == 0)
            {
                continue;
            }

            Edge longest = edges.MaxBy(edge => edge.LengthMm);
            Vector inward = -longest.OutwardNormalAt(0.5) * (_after.IsCounterClockwise ? 1 : -1);
            Angle along = longest.TangentAt(0.5).Direction;
            bool isUpsideDown = along.Degrees is > 90 or <= -90;
            Angle turn = isUpsideDown ? along + Angle.FromDegrees(180) : along;

            // The base line lies under the words: where the metal is below, they are let down by their height.
            bool isMetalBelow = Vector.FromDirection(turn).Left.Dot(inward) < 0;
            Point at = _view.Of(longest.PointAt(0.5)) + (inward * (isMetalBelow ? WordsMm + 0.9 : 1.4));
            yield return new CardWords(at, FaceNames.Of(face), WordsMm, TextAnchor.Middle, turn);
        }
    }

    private IEnumerable<CardMark> Amounts()
    {
        TextStyle style = new(WordsMm, IsBold: true);
        LabelPlaces places = new(
            OnPaper(_before).Concat(Hatch().OfType<CardLine>().SelectMany(line => line.Edges)),
            new Box(Window.MinX + GapMm, Window.MinY + GapMm, Window.MaxX - GapMm, Window.MaxY - 6),
            GapMm
        );
        foreach (
            CutLabel label in CutLabel.AllOf(_simulation, Measure.Typeset).Where(label => label.Part == Part.Blade)
        )
        {
            string words = FormattableString.Invariant($"{label.Pass}: {label.Words}");
            PlacedLabel placed = places.Place(
                _view.Of(label.At),
                label.Outward,
                PrintFonts.WidthMm(words, style),
                WordsMm * 0.75,
                LeaderMm
            );
            yield return CardLine.Straight(placed.At, placed.End, CardInk.Leader);
            yield return Head(placed);
            yield return new CardWords(placed.Foot, words, WordsMm, placed.Anchor, IsBold: true);
        }
    }

    private static CardArea Head(PlacedLabel placed)
    {
        Vector back = (placed.End - placed.At).Normalized * 1.8;
        Point left = placed.At + back + (back.Left * 0.2);
        Point right = placed.At + back - (back.Left * 0.2);
        return new CardArea(
            [new Edge(placed.At, right), new Edge(right, left), new Edge(left, placed.At)],
            CardInk.Head
        );
    }

    private static ImmutableArray<Edge> BoxOf(Box box)
    {
        Point[] corners =
        [
            new(box.MinX, box.MinY),
            new(box.MaxX, box.MinY),
            new(box.MaxX, box.MaxY),
            new(box.MinX, box.MaxY),
        ];
        return [.. corners.Select((corner, i) => new Edge(corner, corners[(i + 1) % corners.Length]))];
    }
}
