using Flushback.Geometry;
using Flushback.Reports.Print;

namespace Flushback.Reports.Card;

/// <summary>Draws a card's marks on a sheet to print.</summary>
/// <param name="sheet">The sheet.</param>
/// <param name="origin">Where the lower left corner of the picture lies on it.</param>
internal sealed class CardPrint(PrintSheet sheet, Point origin)
{
    private readonly Vector _shift = origin - Point.Origin;

    /// <summary>Draws a picture: what is seen through its window, then the rest.</summary>
    public void Draw(TangPicture picture)
    {
        Box window = picture.Window;
        sheet.Within(
            new Box(window.MinX + _shift.X, window.MinY + _shift.Y, window.MaxX + _shift.X, window.MaxY + _shift.Y),
            inside => new CardPrint(inside, origin).DrawAll(picture.Inside())
        );
        DrawAll(picture.Around());
    }

    private void DrawAll(IEnumerable<CardMark> marks)
    {
        foreach (CardMark mark in marks)
        {
            Draw(mark);
        }
    }

    private void Draw(CardMark mark)
    {
        switch (mark)
        {
            case CardLine { Ink.Stroke: { } stroke } line:
                sheet.Edges(line.Edges.Select(Shifted), stroke);
                break;
            case CardArea area:
                Fill? fill = area.Ink.Fill is { } colour ? new Fill(colour) : null;
                sheet.Region([area.Edges.Select(Shifted)], area.Ink.Stroke, fill);
                break;
            case CardWords words:
                sheet.Text(
                    words.At + _shift,
                    words.Words,
                    new TextStyle(words.SizeMm, words.IsBold),
                    words.Anchor,
                    words.Turn
                );
                break;
        }
    }

    private Edge Shifted(Edge edge) => new(edge.Start + _shift, edge.End + _shift, edge.Bulge);
}
