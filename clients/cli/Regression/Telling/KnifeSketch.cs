using System.Globalization;
using System.Text;
using System.Xml.Linq;
using Flushback.Cli.Regression.Baselines;

namespace Flushback.Cli.Regression.Telling;

/// <summary>Kept outlines as a small picture: of one knife, or of a knife over what it was before.</summary>
internal static class KnifeSketch
{
    private static readonly XNamespace _svg = "http://www.w3.org/2000/svg";

    // The handle lies below, the blades on top; the second, which is the smaller in most knives, over the first.
    private static readonly string[] _fromBelow = ["handle", "spring", "blade"];

    /// <summary>The knife by itself.</summary>
    public static XElement Of(KeptOutlines knife, string title) =>
        Picture(Frame.Around(knife), title, [Layer("now", knife)]);

    /// <summary>The knife over its baseline.</summary>
    public static XElement Over(KeptOutlines before, KeptOutlines after, string title) =>
        Picture(Frame.Around(before, after), title, [Layer("now", after), Layer("was", before)]);

    /// <summary>The same, near one place.</summary>
    public static XElement CloseUp(
        KeptOutlines before,
        KeptOutlines after,
        (double X, double Y) at,
        double widthMm,
        string title
    ) => Picture(Frame.At(at, widthMm), title, [Layer("now", after), Layer("was", before)]);

    private static XElement Picture(Frame frame, string title, XElement[] layers) =>
        new(
            _svg + "svg",
            new XAttribute("viewBox", frame.ViewBox),
            new XAttribute("role", "img"),
            new XAttribute("aria-label", title),
            layers
        );

    private static XElement Layer(string name, KeptOutlines knife) =>
        new(
            _svg + "g",
            new XAttribute("class", name),
            _fromBelow
                .SelectMany(kind => knife.Parts.Where(kept => kept.Kind == kind))
                .Select(part => new XElement(
                    _svg + "path",
                    new XAttribute("class", part.Kind),
                    new XAttribute("d", PathOf(part))
                )),
            knife.Pins.Select(pin => new XElement(
                _svg + "circle",
                new XAttribute("cx", Number(pin.X)),
                new XAttribute("cy", Number(-pin.Y)),
                new XAttribute("r", Number(pin.Diameter / 2))
            ))
        );

    // Arcs stay arcs; y runs down in a picture, so that what turns left in the drawing turns the other way round.
    private static string PathOf(KeptPart part)
    {
        StringBuilder path = new();
        KeptVertex from = part.Vertices[0];
        path.Append(CultureInfo.InvariantCulture, $"M{Number(from.X)} {Number(-from.Y)}");
        for (int i = 1; i <= part.Vertices.Count; i++)
        {
            KeptVertex to = part.Vertices[i % part.Vertices.Count];
            if (from.Bulge == 0)
            {
                path.Append(CultureInfo.InvariantCulture, $"L{Number(to.X)} {Number(-to.Y)}");
            }
            else
            {
                double b = Math.Abs(from.Bulge);
                double chord = Math.Sqrt(((to.X - from.X) * (to.X - from.X)) + ((to.Y - from.Y) * (to.Y - from.Y)));
                string radius = Number(chord * (1 + (b * b)) / (4 * b));
                path.Append(
                    CultureInfo.InvariantCulture,
                    $"A{radius} {radius} 0 {(b > 1 ? 1 : 0)} {(from.Bulge < 0 ? 1 : 0)} {Number(to.X)} {Number(-to.Y)}"
                );
            }

            from = to;
        }

        return path.Append('Z').ToString();
    }

    private static string Number(double value) =>
        (Math.Round(value, 3) + 0.0).ToString("0.###", CultureInfo.InvariantCulture);

    /// <summary>What of the drawing a picture shows, in millimetres.</summary>
    private readonly record struct Frame(double MinX, double MinY, double MaxX, double MaxY)
    {
        // A close-up as wide as three and as high as two.
        private const double CloseUpShape = 2.0 / 3;

        private const double MarginShare = 0.03;

        public string ViewBox =>
            FormattableString.Invariant($"{Number(MinX)} {Number(-MaxY)} {Number(MaxX - MinX)} {Number(MaxY - MinY)}");

        public static Frame Around(params KeptOutlines[] knives)
        {
            (double X, double Y)[] places =
            [
                .. knives
                    .SelectMany(knife => knife.Parts)
                    .SelectMany(part =>
                        part.Vertices.SelectMany(
                            (vertex, i) =>
                            {
                                KeptEdge edge = new(vertex, part.Vertices[(i + 1) % part.Vertices.Count]);
                                return (IEnumerable<(double, double)>)
                                    [edge.At(0), edge.At(0.25), edge.At(0.5), edge.At(0.75)];
                            }
                        )
                    ),
            ];
            double margin = MarginShare * (places.Max(at => at.X) - places.Min(at => at.X));
            return new Frame(
                places.Min(at => at.X) - margin,
                places.Min(at => at.Y) - margin,
                places.Max(at => at.X) + margin,
                places.Max(at => at.Y) + margin
            );
        }

        public static Frame At((double X, double Y) middle, double widthMm) =>
            new(
                middle.X - (widthMm / 2),
                middle.Y - (widthMm * CloseUpShape / 2),
                middle.X + (widthMm / 2),
                middle.Y + (widthMm * CloseUpShape / 2)
            );
    }
}
