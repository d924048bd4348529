using System.Globalization;

namespace Flushback.Service.Validation;

/// <summary>Where a field stands in a request; written out only when something is wrong with it.</summary>
/// <param name="Parent">The message around it; null at the request itself.</param>
/// <param name="Name">Name of the field in the contract.</param>
/// <param name="Index">Which element of a repeated field; null for the whole field.</param>
internal sealed record FieldPath(FieldPath? Parent, string Name, int? Index = null)
{
    /// <summary>A field of this one.</summary>
    public FieldPath Of(string name, int? index = null) => new(this, name, index);

    /// <summary>The path as in <c>knife.outlines.blade.vertices[12].x_mm</c>.</summary>
    public override string ToString()
    {
        string index = Index is { } i ? string.Create(CultureInfo.InvariantCulture, $"[{i}]") : "";
        return Parent is null ? Name + index : $"{Parent}.{Name}{index}";
    }
}
