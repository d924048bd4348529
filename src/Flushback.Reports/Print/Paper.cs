namespace Flushback.Reports.Print;

/// <summary>Paper that makers print on.</summary>
public enum Paper
{
    /// <summary>210 by 297 mm (ISO 216).</summary>
    A4,

    /// <summary>8.5 by 11 in (ANSI/ASME Y14.1, size A).</summary>
    Letter,
}
