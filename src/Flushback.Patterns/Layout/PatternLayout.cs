using Flushback.Patterns.Parameters;

namespace Flushback.Patterns.Layout;

/// <summary>Where everything lies before it is drawn: the parameters worked out part by part.</summary>
internal sealed class PatternLayout
{
    public PatternLayout(PatternParameters given)
    {
        Spring = new SpringLayout(given);
        Tang = new TangLayout(Spring.Filled, Spring);
        Notch = new NotchLayout(Spring.Filled, Tang);
        Blade = new BladeLayout(Spring.Filled, Tang, Notch);
        Rear = new RearLayout(Blade.Filled, Spring, Blade);
        Handle = new HandleLayout(Rear.Filled, Spring, Blade);
        Given = given;
        Dimensions = Handle.Filled;
    }

    /// <summary>The parameters as given.</summary>
    public PatternParameters Given { get; }

    /// <summary>The parameters with every number filled in.</summary>
    public PatternParameters Dimensions { get; }

    public SpringLayout Spring { get; }

    public TangLayout Tang { get; }

    public NotchLayout Notch { get; }

    public BladeLayout Blade { get; }

    public RearLayout Rear { get; }

    public HandleLayout Handle { get; }
}
