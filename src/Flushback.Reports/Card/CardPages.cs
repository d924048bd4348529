using Flushback.Geometry;
using Flushback.Reports.Print;

namespace Flushback.Reports.Card;

/// <summary>Lays a card out on a sheet of A4, within what Letter has room for too.</summary>
internal sealed class CardPages
{
    private static readonly SheetFormat _format = new(Paper.A4);
    private static readonly Stroke _line = new(0.2);
    private static readonly Stroke _box = new(0.35);
    private static readonly TextStyle _name = new(CardLayout.NameSizeMm, IsBold: true);
    private static readonly TextStyle _verdict = new(CardLayout.VerdictSizeMm, IsBold: true);
    private static readonly TextStyle _label = new(2.3);
    private static readonly TextStyle _title = new(CardLayout.TitleSizeMm, IsBold: true);
    private static readonly TextStyle _amount = new(CardLayout.AmountSizeMm);
    private static readonly TextStyle _thou = new(3, IsBold: true);
    private static readonly TextStyle _note = new(CardLayout.NoteSizeMm);

    private static readonly double _left = (_format.WidthMm - CardLayout.WidthMm) / 2;

    private readonly CardSheet _card;
    private readonly CardLayout _layout;
    private readonly PrintSheet _sheet = new(_format);
    private double _top = (_format.HeightMm + CardLayout.HeightMm) / 2;

    private CardPages(CardSheet card, CardLayout layout) => (_card, _layout) = (card, layout);

    /// <summary>The sheet, and where the picture's lower left corner lies on it.</summary>
    public static (PrintSheet Sheet, Point Picture) Of(CardSheet card, CardLayout layout)
    {
        CardPages pages = new(card, layout);
        pages.Head();
        Point picture = pages.Picture();
        pages.Table();
        pages.Paragraph(layout.Obstacles, _amount);
        pages.Paragraph(layout.Notes, _note);
        pages.Paragraph(layout.Cautions, _note);
        return (pages._sheet, picture);
    }

    private void Head()
    {
        Down(CardLayout.NameSizeMm);
        string date = "Date ____________________";
        double dateMm = PrintFonts.WidthMm(date, _amount);
        _sheet.Text(new Point(_left, _top), Fitted(_card.Name, _name, CardLayout.WidthMm - dateMm - 4), _name);
        _sheet.Text(new Point(_left + CardLayout.WidthMm, _top), date, _amount, TextAnchor.Right);
        Down(1.5);
        Lines(_layout.Verdict, _verdict);
        Down(CardLayout.GapMm);
    }

    private Point Picture()
    {
        Down(_layout.Picture.HeightMm);
        Point origin = new(_left, _top);
        new CardPrint(_sheet, origin).Draw(_layout.Picture);
        Down(CardLayout.GapMm);
        return origin;
    }

    private void Table()
    {
        double work = _left + CardLayout.NumberMm;
        double readings = work + _layout.WorkMm;
        double head = _top - CardLayout.TableHeadMm;
        _sheet.Text(new Point(work, head + 1.8), "What to do, in this order", _label);
        for (int i = 0; i < _card.Stops.Count; i++)
        {
            double x = readings + (2 * CardLayout.ReadingMm * i);
            _sheet.Text(new Point(x + CardLayout.ReadingMm, head + 5.2), _card.Stops[i], _title, TextAnchor.Middle);
            _sheet.Text(new Point(x + (0.5 * CardLayout.ReadingMm), head + 1.8), "expect", _label, TextAnchor.Middle);
            _sheet.Text(new Point(x + (1.5 * CardLayout.ReadingMm), head + 1.8), "measured", _label, TextAnchor.Middle);
        }

        _top = head;
        Rule();
        for (int row = 0; row < _card.Rows.Count; row++)
        {
            Row(_card.Rows[row], _layout.Amounts[row], _layout.RowMm(row), work, readings);
        }

        Down(CardLayout.GapMm);
    }

    private void Row(CardRow row, IReadOnlyList<string> amount, double heightMm, double work, double readings)
    {
        double title = _top - 3.6;
        _sheet.Text(new Point(_left + 1, title), row.Number, _title);
        _sheet.Text(new Point(work, title), row.Title, _title);
        for (int i = 0; i < amount.Count; i++)
        {
            _sheet.Text(new Point(work, title - ((i + 1) * CardLayout.LineMm)), amount[i], _amount);
        }

        for (int i = 0; i < row.Readings.Count; i++)
        {
            double x = readings + (2 * CardLayout.ReadingMm * i);
            double middle = x + (0.5 * CardLayout.ReadingMm);
            _sheet.Text(new Point(middle, title), row.Readings[i].Thou, _thou, TextAnchor.Middle);
            _sheet.Text(new Point(middle, title - CardLayout.LineMm), row.Readings[i].Mm, _amount, TextAnchor.Middle);
            _sheet.Rectangle(
                new Box(
                    x + CardLayout.ReadingMm + 0.8,
                    _top - heightMm + 0.7,
                    x + (2 * CardLayout.ReadingMm) - 0.8,
                    _top - 0.7
                ),
                _box
            );
        }

        Down(heightMm);
        Rule();
    }

    private void Rule() => _sheet.Line(new Point(_left, _top), new Point(_left + CardLayout.WidthMm, _top), _line);

    private void Paragraph(IReadOnlyList<string> lines, TextStyle style)
    {
        Lines(lines, style);
        Down(lines.Count > 0 ? CardLayout.GapMm / 2 : 0);
    }

    private void Lines(IReadOnlyList<string> lines, TextStyle style)
    {
        foreach (string line in lines)
        {
            Down(CardLayout.LineMm);
            _sheet.Text(new Point(_left, _top + 0.6), line, style);
        }
    }

    private void Down(double mm) => _top -= mm;

    /// <summary>As much of the words as a width holds.</summary>
    private static string Fitted(string words, TextStyle style, double widthMm)
    {
        string fitted = words;
        while (fitted.Length > 1 && PrintFonts.WidthMm(fitted, style) > widthMm)
        {
            words = words[..^1];
            fitted = words.TrimEnd() + "\u2026";
        }

        return fitted;
    }
}
