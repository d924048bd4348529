namespace Flushback.Reports.Print;

/// <summary>A colour by its shares of red, green and blue, each from 0 to 255; <c>default</c> is black.</summary>
public readonly record struct PrintColour(byte Red, byte Green, byte Blue)
{
    /// <summary>Black.</summary>
    public static PrintColour Black => default;

    /// <summary>White.</summary>
    public static PrintColour White => new(255, 255, 255);

    /// <summary>A grey from 0, black, to 255, white.</summary>
    public static PrintColour Grey(byte lightness) => new(lightness, lightness, lightness);
}
