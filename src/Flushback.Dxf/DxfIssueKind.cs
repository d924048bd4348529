namespace Flushback.Dxf;

/// <summary>What an issue means for the drawing.</summary>
public enum DxfIssueKind
{
    /// <summary>The drawing, or the layer that was asked for, cannot be used as it is.</summary>
    Error,

    /// <summary>Something was put right on the way in; the sentence says what and by how much.</summary>
    Repair,

    /// <summary>Something was left out or taken for granted; nothing was changed.</summary>
    Notice,

    /// <summary>The drawing is larger or deeper than <c>DxfLimits</c> allow; it was not read on.</summary>
    LimitExceeded,
}
