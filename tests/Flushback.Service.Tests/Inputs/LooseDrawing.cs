using System.Globalization;
using System.Text;
using Flushback.Geometry;
using Flushback.Mechanism.Knives;

namespace Flushback.Service.Tests.Inputs;

/// <summary>An ASCII R12 drawing of loose lines, arcs and circles, as a CAD user leaves it; written here by hand.</summary>
internal sealed class LooseDrawing
{
    private readonly StringBuilder _entities = new();

    /// <summary>Value of $INSUNITS: 4 millimetres, 1 inches, 6 metres; null for a drawing that does not say.</summary>
    public int? Units { get; init; } = 4;

    /// <summary>What one millimetre is in the drawing's coordinates.</summary>
    public double Scale { get; init; } = 1;

    /// <summary>A knife on the layers that are looked for by default.</summary>
    public static LooseDrawing Of(DrawnKnife knife, int? units = 4, double scale = 1)
    {
        LooseDrawing drawing = new() { Units = units, Scale = scale };
        drawing.Add("BLADE", knife.Blade).Add("SPRING", knife.Spring);
        drawing.Add("PINS", knife.Pivot).Add("PINS", knife.CentrePin);
        if (knife.RearPin is { } rear)
        {
            drawing.Add("PINS", rear);
        }

        return knife.Handle is { } handle ? drawing.Add("HANDLE", handle) : drawing;
    }

    /// <summary>An outline, edge by edge; some of its edges may be left out.</summary>
    public LooseDrawing Add(string layer, Outline outline, int leaveOut = 0)
    {
        foreach (Edge edge in outline.Edges.Skip(leaveOut))
        {
            Add(layer, edge);
        }

        return this;
    }

    /// <summary>A line or an arc.</summary>
    public LooseDrawing Add(string layer, Edge edge)
    {
        if (!edge.IsArc)
        {
            Entity("LINE", layer);
            Pair(10, edge.Start.X * Scale).Pair(20, edge.Start.Y * Scale);
            return Pair(11, edge.End.X * Scale).Pair(21, edge.End.Y * Scale);
        }

        // An ARC always runs counter-clockwise.
        Edge ccw = edge.Bulge > 0 ? edge : edge.Reversed;
        Entity("ARC", layer);
        Pair(10, ccw.Centre.X * Scale).Pair(20, ccw.Centre.Y * Scale).Pair(40, ccw.RadiusMm * Scale);
        return Pair(50, (ccw.Start - ccw.Centre).Direction.Degrees).Pair(51, (ccw.End - ccw.Centre).Direction.Degrees);
    }

    /// <summary>A circle.</summary>
    public LooseDrawing Add(string layer, Circle circle)
    {
        Entity("CIRCLE", layer);
        return Pair(10, circle.Centre.X * Scale).Pair(20, circle.Centre.Y * Scale).Pair(40, circle.RadiusMm * Scale);
    }

    /// <summary>A line of text, which no machine cuts.</summary>
    public LooseDrawing AddText(string layer, Point at, string words)
    {
        Entity("TEXT", layer);
        Pair(10, at.X * Scale).Pair(20, at.Y * Scale).Pair(40, Scale);
        _entities.Append(CultureInfo.InvariantCulture, $"1\n{words}\n");
        return this;
    }

    /// <summary>The file's text.</summary>
    public override string ToString()
    {
        string units = Units is { } code
            ? string.Create(CultureInfo.InvariantCulture, $"9\n$INSUNITS\n70\n{code}\n")
            : "";
        return $"0\nSECTION\n2\nHEADER\n9\n$ACADVER\n1\nAC1009\n{units}0\nENDSEC\n"
            + $"0\nSECTION\n2\nENTITIES\n{_entities}0\nENDSEC\n0\nEOF\n";
    }

    /// <summary>The file's bytes.</summary>
    public byte[] ToBytes() => Encoding.ASCII.GetBytes(ToString());

    private void Entity(string type, string layer) => _entities.Append($"0\n{type}\n8\n{layer}\n");

    private LooseDrawing Pair(int code, double value)
    {
        _entities.Append(CultureInfo.InvariantCulture, $"{code}\n{value:R}\n");
        return this;
    }
}
