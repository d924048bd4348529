namespace Flushback.Dxf.Tags;

/// <summary>How the value of a group is laid down in a binary file.</summary>
internal enum GroupType
{
    /// <summary>Text ended by a zero byte; handles too.</summary>
    Text,

    /// <summary>A double of eight bytes.</summary>
    Number,

    /// <summary>One byte, zero or one.</summary>
    Flag,

    /// <summary>A whole number of two bytes.</summary>
    Short,

    /// <summary>A whole number of four bytes.</summary>
    Whole,

    /// <summary>A whole number of eight bytes.</summary>
    Long,

    /// <summary>A byte with a length, and as many bytes.</summary>
    Chunk,
}

/// <summary>The types of the group codes, by the format's public reference ("Group code value types").</summary>
internal static class GroupTypes
{
    /// <summary>The type of a code; null for a code the format does not know.</summary>
    public static GroupType? Of(int code) =>
        code switch
        {
            >= 0 and <= 9 => GroupType.Text,
            >= 10 and <= 59 => GroupType.Number,
            >= 60 and <= 79 => GroupType.Short,
            >= 90 and <= 99 => GroupType.Whole,
            100 or 101 or 102 or 105 => GroupType.Text,
            >= 110 and <= 149 => GroupType.Number,
            >= 160 and <= 169 => GroupType.Long,
            >= 170 and <= 179 => GroupType.Short,
            >= 210 and <= 239 => GroupType.Number,
            >= 270 and <= 289 => GroupType.Short,
            >= 290 and <= 299 => GroupType.Flag,
            >= 300 and <= 309 => GroupType.Text,
            >= 310 and <= 319 => GroupType.Chunk,
            >= 320 and <= 369 => GroupType.Text,
            >= 370 and <= 389 => GroupType.Short,
            >= 390 and <= 399 => GroupType.Text,
            >= 400 and <= 409 => GroupType.Short,
            >= 410 and <= 419 => GroupType.Text,
            >= 420 and <= 429 => GroupType.Whole,
            >= 430 and <= 439 => GroupType.Text,
            >= 440 and <= 459 => GroupType.Whole,
            >= 460 and <= 469 => GroupType.Number,
            >= 470 and <= 481 => GroupType.Text,
            999 => GroupType.Text,
            1004 => GroupType.Chunk,
            >= 1000 and <= 1009 => GroupType.Text,
            >= 1010 and <= 1059 => GroupType.Number,
            >= 1060 and <= 1070 => GroupType.Short,
            1071 => GroupType.Whole,
            _ => null,
        };
}
