using Flushback.Contract.V1;

namespace Flushback.Cli.Arguments;

/// <summary>A pass told in words: verb, place and named amounts, from the command line or a file of passes.</summary>
/// <param name="verb">What is done: slice, wheel, round, relieve, dress, lower or shorten.</param>
/// <param name="place">Where: a face or corner in words of the contract with hyphens; <c>nose</c> and <c>tip</c>.</param>
/// <param name="amounts">By how much, by name.</param>
internal sealed class PassWords(string verb, string place, IReadOnlyDictionary<string, string> amounts)
{
    /// <summary>Verbs a pass may begin with.</summary>
    public static IReadOnlyList<string> Verbs { get; } =
    ["slice", "wheel", "round", "relieve", "dress", "lower", "shorten"];

    private readonly HashSet<string> _used = new(StringComparer.OrdinalIgnoreCase);

    /// <summary>What is wrong with the words, in one sentence; null when they make a pass.</summary>
    public string? Complaint { get; private set; }

    private string Said => $"{verb} {place}";

    /// <summary>The pass; null when the words make none.</summary>
    public Pass? ToPass()
    {
        Pass? pass = verb.ToLowerInvariant() switch
        {
            "slice" => new Pass
            {
                FlatSlice = new FlatSlice
                {
                    Face = Site(),
                    FrontDepthMm = Depth("front"),
                    RearDepthMm = Depth("rear"),
                },
            },
            "wheel" => new Pass
            {
                WheelSlice = new WheelSlice
                {
                    Face = Site(),
                    FrontDepthMm = Depth("front"),
                    RearDepthMm = Depth("rear"),
                    WheelRadiusMm = Wanted("radius"),
                },
            },
            "round" => new Pass
            {
                RoundCorner = new RoundCorner { Corner = Site(), RadiusMm = Wanted("radius") },
            },
            "relieve" => new Pass
            {
                ReliefArc = new ReliefArc
                {
                    Face = Site(),
                    DepthMm = Wanted("depth"),
                    FrontMarginMm = Wanted("front"),
                    RearMarginMm = Wanted("rear"),
                },
            },
            "dress" when Is("kick") => new Pass { DressKick = new DressKick { DepthMm = Wanted("depth") } },
            "dress" when Is("end-face") => new Pass
            {
                DressEndFace = new DressEndFace { AngleDeg = Degrees("angle"), DepthMm = Optional("depth") ?? 0 },
            },
            "lower" when Is("nose") => new Pass
            {
                LowerNose = new LowerNose { FrontDepthMm = Depth("front"), RearDepthMm = Depth("rear") },
            },
            "shorten" when Is("tip") => new Pass
            {
                ShortenTip = new ShortenTip { LengthMm = Wanted("by"), Allowed = Allowed() },
            },
            _ => null,
        };
        if (pass is null)
        {
            Complain($"'{Said}' is no pass; passes are {string.Join(", ", PassText.Examples)}.");
        }
        else if (amounts.Keys.FirstOrDefault(name => !_used.Contains(name)) is { } unused)
        {
            Complain($"'{Said}' takes no {unused}; leave it out.");
        }

        return Complaint is null ? pass : null;
    }

    private bool Is(string name) => place.Equals(name, StringComparison.OrdinalIgnoreCase);

    private Site Site()
    {
        if (!FaceName.TryFace(place, out FaceOverride? face))
        {
            Complain($"'{place}' names no face or corner; they are {string.Join(", ", FaceName.Names)}.");
            return new Site();
        }

        return face.HasSpringFace ? new Site { SpringFace = face.SpringFace } : new Site { BladeFace = face.BladeFace };
    }

    /// <summary>A depth of its own, or that of both ends.</summary>
    private double Depth(string name)
    {
        if (Optional(name) is { } own)
        {
            return own;
        }

        if (Optional("depth") is { } both)
        {
            return both;
        }

        Complain($"'{Said}' says no {name}; give front= and rear=, or depth= for both, such as front=2thou rear=0mm.");
        return 0;
    }

    private double Wanted(string name)
    {
        if (Optional(name) is { } mm)
        {
            return mm;
        }

        Complain($"'{Said}' says no {name}; give it, such as {name}=0.5mm.");
        return 0;
    }

    private double? Optional(string name)
    {
        if (Text(name) is not { } text)
        {
            return null;
        }

        if (!Length.TryParse(text, out double mm))
        {
            Complain($"{name} of '{Said}': {Length.Complaint(text)}");
        }

        return mm;
    }

    private double Degrees(string name)
    {
        double degrees = 0;
        if (Text(name) is not { } text)
        {
            Complain($"'{Said}' says no {name}; give it in degrees, such as {name}=80.");
        }
        else if (!Number.TryParse(text, out degrees))
        {
            Complain($"{name} of '{Said}': {Number.Complaint(text)}");
        }

        return degrees;
    }

    private bool Allowed()
    {
        string text = Text("allowed") ?? "no";
        bool isYes = text.Equals("yes", StringComparison.OrdinalIgnoreCase);
        if (!isYes && !text.Equals("no", StringComparison.OrdinalIgnoreCase))
        {
            Complain($"allowed of '{Said}' is '{text}'; write yes or no.");
        }

        return isYes;
    }

    private string? Text(string name)
    {
        _used.Add(name);
        return amounts.GetValueOrDefault(name);
    }

    // The first complaint is the cause of the rest.
    private void Complain(string sentence) => Complaint ??= sentence;
}
