using System.Collections.Immutable;
using Flushback.Geometry;
using Flushback.Patterns;
using Flushback.Reports.Print;

namespace Flushback.Reports.Templates;

/// <summary>What a template shows: the pieces apart, and below them the knife put together, blade open.</summary>
internal sealed class TemplateDrawing
{
    public const double GapMm = 12;
    private const double EdgeMm = 4;
    private const double WordsMm = 3;
    private const double WordsBelowMm = 5;
    private const double CrossBeyondMm = 1.5;

    private static readonly Stroke _cut = new(0.18);
    private static readonly Stroke _finished = new(0.13) { DashesMm = [2, 1] };
    private static readonly Stroke _fine = new(0.1);
    private static readonly Stroke _mark = new(0.1) { DashesMm = [1, 0.7] };
    private static readonly TextStyle _words = new(WordsMm);

    private readonly DrawnPattern _pattern;
    private readonly PieceLayout _layout;
    private readonly ImmutableArray<string> _labels;
    private readonly Vector _together;
    private readonly Box _togetherBox;

    public TemplateDrawing(DrawnPattern pattern, ImmutableArray<string> labels)
    {
        _pattern = pattern;
        _labels = labels;
        _layout = PieceLayout.Of(pattern, GapMm);
        Box knife = pattern.Pieces.Aggregate(Box.Empty, (all, piece) => all.Including(piece.Finished.Bounds));
        _together = new Vector(-knife.MinX, -GapMm - WordsBelowMm - knife.MaxY);
        _togetherBox = new Box(0, knife.MinY + _together.Y, knife.WidthMm, knife.MaxY + _together.Y);
        double widest = labels.Max(label => PrintFonts.WidthMm(label, _words));
        Bounds = _layout
            .Bounds.Including(_togetherBox)
            .Including(new Point(widest, _togetherBox.MinY - WordsBelowMm))
            .Grown(EdgeMm);
    }

    /// <summary>Box around everything, in millimetres.</summary>
    public Box Bounds { get; }

    /// <summary>Where the pieces lie.</summary>
    public PieceLayout Layout => _layout;

    /// <summary>Draws it as seen on a sheet.</summary>
    public void DrawOn(PrintSheet sheet, PaperView view)
    {
        foreach ((LaidPiece piece, string label) in _layout.Pieces.Zip(_labels))
        {
            DrawPiece(sheet, view, piece);
            DrawLabel(sheet, view, piece.Cut.Bounds, label);
        }

        DrawTogether(sheet, view);
        DrawLabel(sheet, view, _togetherBox, _labels[^1]);
    }

    /// <summary>Draws only the borders, for a small plan.</summary>
    public void DrawPlan(PrintSheet sheet, PaperView view, Stroke stroke)
    {
        foreach (LaidPiece piece in _layout.Pieces)
        {
            sheet.Edges(piece.Cut.Edges.Select(view.Of), stroke);
        }

        foreach (PatternPiece piece in _pattern.Pieces)
        {
            sheet.Edges(Together(piece.Finished).Edges.Select(view.Of), stroke);
        }
    }

    private static void DrawPiece(PrintSheet sheet, PaperView view, LaidPiece piece)
    {
        Draw(sheet, view, piece.Cut, _cut);
        if (piece.Piece.HasStock)
        {
            Draw(sheet, view, piece.Finished, _finished);
        }

        foreach (PatternMark mark in piece.Marks)
        {
            Draw(sheet, view, mark.Outline, _mark);
        }

        foreach (PatternHole hole in piece.Holes)
        {
            DrawHole(sheet, view, hole.Circle);
        }
    }

    private void DrawTogether(PrintSheet sheet, PaperView view)
    {
        foreach (PatternPiece piece in _pattern.Pieces)
        {
            bool isMetal = piece.Kind is PieceKind.Blade or PieceKind.Spring;
            Draw(sheet, view, Together(piece.Finished), isMetal ? _cut : _fine);
            foreach (PatternMark mark in piece.Marks.Where(mark => mark.Kind == MarkKind.NailNick))
            {
                Draw(sheet, view, Together(mark.Outline), _fine);
            }
        }

        foreach (PatternHole hole in _pattern.Pieces.Where(p => p.Kind == PieceKind.Handle).SelectMany(p => p.Holes))
        {
            DrawHole(sheet, view, new RigidMotion(Angle.Zero, _together).Apply(hole.Circle));
        }
    }

    /// <summary>An outline of the knife put together, where it lies on the drawing.</summary>
    public Outline Together(Outline outline) => outline.Transformed(new RigidMotion(Angle.Zero, _together));

    private static void DrawLabel(PrintSheet sheet, PaperView view, Box box, string label) =>
        sheet.Text(view.Of(new Point(box.MinX, box.MinY - WordsBelowMm)), label, _words);

    private static void Draw(PrintSheet sheet, PaperView view, Outline outline, Stroke stroke) =>
        sheet.Region([outline.Edges.Select(view.Of)], stroke);

    // The cross is for the punch.
    private static void DrawHole(PrintSheet sheet, PaperView view, Circle hole)
    {
        Circle onPaper = view.Of(hole);
        sheet.Circle(onPaper, _cut);
        double reach = onPaper.RadiusMm + CrossBeyondMm;
        sheet.Line(onPaper.Centre - new Vector(reach, 0), onPaper.Centre + new Vector(reach, 0), _fine);
        sheet.Line(onPaper.Centre - new Vector(0, reach), onPaper.Centre + new Vector(0, reach), _fine);
    }
}
