using System.Text.Json;

namespace Flushback.Dxf.Tests;

/// <summary>The drawings that the independent writer made, once for all tests.</summary>
public sealed class EzdxfDrawings
{
    private readonly string folder;

    public EzdxfDrawings()
    {
        (folder, Contents) = Referee.Make();
    }

    /// <summary>What the writer says it put in, by file name.</summary>
    public JsonElement Contents { get; }

    public static TheoryData<string> Versions => ["R12", "R2000", "R2004", "R2007", "R2010", "R2013", "R2018"];

    public byte[] Bytes(string name) => File.ReadAllBytes(Path.Combine(folder, name));
}
