using System.Text.Json;

namespace Flushback.Dxf.Tests;

/// <summary>The drawings that the independent writer made, once for all tests.</summary>
public sealed class EzdxfDrawings
{
    private readonly string _folder;

    public EzdxfDrawings()
    {
        (_folder, Contents) = Referee.Make();
    }

    /// <summary>What the writer says it put in, by file name.</summary>
    public JsonElement Contents { get; }

    /// <summary>Every version the independent writer knows.</summary>
    public static IReadOnlyList<string> Versions { get; } =
    ["R12", "R2000", "R2004", "R2007", "R2010", "R2013", "R2018"];

    /// <summary>A file of basic entities in every version, as text.</summary>
    public static TheoryData<string> TextFiles => [.. Versions.Select(version => $"basic_{version}_asc.dxf")];

    /// <summary>A file of basic entities in every version, as text and binary.</summary>
    public static TheoryData<string> AllFiles =>
        [.. Versions.SelectMany(version => new[] { $"basic_{version}_asc.dxf", $"basic_{version}_bin.dxf" })];

    public byte[] Bytes(string name) => File.ReadAllBytes(Path.Combine(_folder, name));
}
