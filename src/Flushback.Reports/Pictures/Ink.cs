using System.Xml.Linq;

namespace Flushback.Reports.Pictures;

/// <summary>
/// How one kind of line, area or word is drawn. Every picture carries these as plain attributes, so that it shows by
/// itself anywhere; the class lets the page's own style take over, in the dark or on paper.
/// </summary>
internal sealed class Ink
{
    private const string Sans = "system-ui, 'Segoe UI', 'Helvetica Neue', 'DejaVu Sans', sans-serif";
    private const string InkColour = "#1f2a36";
    private const string QuietColour = "#5a6673";
    private const string PaperColour = "#fcfcfa";

    private readonly string _class;
    private readonly (string Name, string Value)[] _attributes;

    private Ink(string cssClass, params (string Name, string Value)[] attributes)
    {
        _class = cssClass;
        _attributes = attributes;
    }

    /// <summary>The sheet the picture is drawn on.</summary>
    public static Ink Paper { get; } = new("fb-paper", ("fill", PaperColour));

    public static Ink Grid { get; } = Line("fb-grid", "#e3e6e6", 1);

    // Temper colours, as the smith sees them: a blade drawn to straw, a spring drawn to blue.
    public static Ink Blade { get; } =
        new(
            "fb-blade",
            ("fill", "#eddcb0"),
            ("stroke", InkColour),
            ("stroke-width", "2"),
            ("stroke-linejoin", "round")
        );

    // Between straw and blue the steel turns violet.
    public static Ink SecondBlade { get; } =
        new(
            "fb-blade-2",
            ("fill", "#dcc4da"),
            ("stroke", InkColour),
            ("stroke-width", "2"),
            ("stroke-linejoin", "round")
        );

    public static Ink Spring { get; } =
        new(
            "fb-spring",
            ("fill", "#bfd0e8"),
            ("stroke", InkColour),
            ("stroke-width", "2"),
            ("stroke-linejoin", "round")
        );

    public static Ink Handle { get; } =
        new("fb-handle", ("fill", "#eeeeea"), ("stroke", "#8b949c"), ("stroke-width", "1.5"));

    /// <summary>A part that is only metal to be cut, neither blade nor spring.</summary>
    public static Ink Metal { get; } =
        new(
            "fb-metal",
            ("fill", "#e2e5e6"),
            ("stroke", InkColour),
            ("stroke-width", "1.6"),
            ("stroke-linejoin", "round")
        );

    /// <summary>Where the middle of the kerf runs.</summary>
    public static Ink CutPath { get; } =
        new("fb-curve", ("fill", "none"), ("stroke", "#24568f"), ("stroke-width", "1.2"), ("stroke-dasharray", "8 3"));

    /// <summary>A contour that does not close.</summary>
    public static Ink OpenLine { get; } = Line("fb-normal", "#a3261c", 2);

    public static Ink OpenEnd { get; } =
        new("fb-open-end", ("fill", PaperColour), ("stroke", "#a3261c"), ("stroke-width", "2"));

    /// <summary>A part shown in another position than the main one.</summary>
    /// <summary>Metal that a pass takes off.</summary>
    public static Ink Removed { get; } = new("fb-removed", ("fill", "#a3261c"));

    public static Ink Phantom { get; } =
        new(
            "fb-phantom",
            ("fill", "none"),
            ("stroke", "#6b5a2a"),
            ("stroke-width", "1.6"),
            ("stroke-dasharray", "14 4 3 4 3 4")
        );

    public static Ink Pin { get; } =
        new("fb-pin", ("fill", PaperColour), ("stroke", InkColour), ("stroke-width", "1.8"));

    /// <summary>The outline of what lies behind something else.</summary>
    public static Ink Hidden { get; } = Line("fb-hidden", InkColour, 1.3, "7 4");

    /// <summary>A ring around a place.</summary>
    public static Ink Ring { get; } = Line("fb-normal", "#a3261c", 2.4);

    public static Ink CentreLine { get; } = Line("fb-centre", QuietColour, 1, "10 3 2 3");

    /// <summary>Where the back lies with the blade open.</summary>
    public static Ink FlushLine { get; } = Line("fb-flush", "#2f6f5e", 1.6, "16 4 3 4");

    public static Ink Axis { get; } = Line("fb-axis", InkColour, 1.4);

    public static Ink Hairline { get; } = Line("fb-hair", QuietColour, 1, "3 4");

    public static Ink Contact { get; } =
        new("fb-contact", ("fill", "#a3261c"), ("stroke", PaperColour), ("stroke-width", "1.5"));

    public static Ink ContactLine { get; } = Line("fb-normal", "#a3261c", 2.4);

    public static Ink FaceContact { get; } =
        new("fb-normal", ("fill", "none"), ("stroke", "#a3261c"), ("stroke-width", "6"), ("stroke-linecap", "round"));

    public static Ink ContactNumber { get; } = Words("fb-number", "#ffffff", 700, halo: false);

    public static Ink Curve { get; } =
        new("fb-curve", ("fill", "none"), ("stroke", "#24568f"), ("stroke-width", "2.6"), ("stroke-linejoin", "round"));

    /// <summary>What a curve is compared with.</summary>
    public static Ink SecondCurve { get; } = Line("fb-second", "#6b5a2a", 2, "9 4");

    /// <summary>What lies between two curves.</summary>
    public static Ink ThirdCurve { get; } = Line("fb-third", QuietColour, 1.5, "2 3");

    /// <summary>Where the blade rests: on the chart, and as the hand of a gauge.</summary>
    public static Ink RestPoint { get; } =
        new("fb-stop", ("fill", InkColour), ("stroke", PaperColour), ("stroke-width", "1.5"));

    public static Ink CurvePoint { get; } =
        new("fb-point", ("fill", "#24568f"), ("stroke", PaperColour), ("stroke-width", "1.5"));

    public static Ink Window { get; } =
        new("fb-window", ("fill", "#bfe0cf"), ("stroke", "#2f6f5e"), ("stroke-width", "1.2"));

    public static Ink Bar { get; } = new("fb-bar", ("fill", "#24568f"));

    public static Ink Strip { get; } =
        new("fb-strip", ("fill", "#e6ebf2"), ("stroke", PaperColour), ("stroke-width", "2"));

    public static Ink StripOther { get; } =
        new("fb-strip-other", ("fill", "#f1e9d2"), ("stroke", PaperColour), ("stroke-width", "2"));

    public static Ink Label { get; } = Words("fb-label", InkColour, 400);

    public static Ink StripLabel { get; } = Words("fb-label", InkColour, 400, halo: false);

    public static Ink StrongLabel { get; } = Words("fb-label", InkColour, 700);

    public static Ink QuietLabel { get; } = Words("fb-quiet", QuietColour, 400);

    public static Ink FlushLabel { get; } = Words("fb-flush-label", "#265c4e", 600);

    /// <summary>The attributes to hang on an element.</summary>
    public IEnumerable<XAttribute> Attributes =>
        [
            new XAttribute("class", _class),
            .. _attributes.Select(attribute => new XAttribute(attribute.Name, attribute.Value)),
        ];

    private static Ink Line(string cssClass, string colour, double width, string? dashes = null) =>
        new(
            cssClass,
            [
                ("fill", "none"),
                ("stroke", colour),
                ("stroke-width", Svg.Number(width)),
                .. dashes is null ? [] : new[] { ("stroke-dasharray", dashes) },
            ]
        );

    // The halo in the paper's colour keeps words legible where they cross a line.
    private static Ink Words(string cssClass, string colour, int weight, bool halo = true) =>
        new(
            cssClass,
            [
                ("fill", colour),
                ("font-family", Sans),
                ("font-weight", Svg.Number(weight)),
                .. halo
                    ? new[]
                    {
                        ("stroke", PaperColour),
                        ("stroke-width", "4"),
                        ("stroke-linejoin", "round"),
                        ("paint-order", "stroke"),
                    }
                    : [],
            ]
        );
}
