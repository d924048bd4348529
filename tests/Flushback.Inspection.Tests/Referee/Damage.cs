using Flushback.Geometry;

namespace Flushback.Inspection.Tests.Referee;

/// <summary>Draws a part as loose lines and arcs and spoils it: gaps, copies, overlaps, specks, short lines for arcs.</summary>
internal static class Damage
{
    public static string Of(Outline outer, IReadOnlyList<Outline> holes, int seed)
    {
        Random random = new(seed);
        List<string> entities = [];
        foreach (Outline loop in holes.Prepend(outer))
        {
            foreach (Edge edge in loop.Edges)
            {
                Spoil(edge, entities, random);
            }
        }

        string[] shuffled = [.. entities];
        random.Shuffle(shuffled);
        return string.Concat(shuffled);
    }

    private static void Spoil(Edge edge, List<string> entities, Random random)
    {
        string Next() => $"{(char)('A' + random.Next(6))}{entities.Count:X4}";
        switch (random.Next(8))
        {
            case 0 when !edge.IsArc:
                // Ends that miss their neighbours by a few micrometres.
                Vector off = Vector.FromDirection(new Angle(random.NextDouble() * 6)) * 0.004;
                entities.Add(Entity(edge with { Start = edge.Start + off }, Next()));
                break;
            case 1:
                entities.Add(Entity(edge, Next()));
                entities.Add(Entity(edge.Reversed, Next()));
                break;
            case 2:
                entities.Add(Entity(edge.Part(0, 0.7), Next()));
                entities.Add(Entity(edge.Part(0.4, 1), Next()));
                break;
            case 3:
                entities.Add(Entity(edge, Next()));
                entities.Add(Sheet.Line(edge.Start.X, edge.Start.Y, edge.Start.X, edge.Start.Y, Next()));
                break;
            case 4 when edge.IsArc:
                int count = (int)Math.Ceiling(Math.Abs(edge.Sweep.Radians) / 0.1) + 4;
                for (int i = 0; i < count; i++)
                {
                    Edge part = edge.Part((double)i / count, (i + 1.0) / count);
                    entities.Add(Entity(part with { Bulge = 0 }, Next()));
                }

                break;
            default:
                entities.Add(Entity(edge, Next()));
                break;
        }
    }

    private static string Entity(Edge edge, string handle)
    {
        if (!edge.IsArc)
        {
            return Sheet.Line(edge.Start.X, edge.Start.Y, edge.End.X, edge.End.Y, handle);
        }

        Edge turned = edge.Bulge > 0 ? edge : edge.Reversed;
        Point centre = turned.Centre;
        return Sheet.Arc(
            centre.X,
            centre.Y,
            turned.RadiusMm,
            (turned.Start - centre).Direction.Degrees,
            (turned.End - centre).Direction.Degrees,
            handle
        );
    }
}
