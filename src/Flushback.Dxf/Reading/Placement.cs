namespace Flushback.Dxf.Reading;

/// <summary>Where the entities of a run go: into model space itself, or into a block placed there.</summary>
/// <param name="Map">From the run's coordinates to millimetres of the drawing.</param>
/// <param name="Insert">The INSERT that placed the run; null for model space itself.</param>
/// <param name="Block">Name of the block.</param>
/// <param name="Outer">The placement that the INSERT itself lies in.</param>
internal sealed record Placement(PlaneMap Map, EntityRecord? Insert, string Block, Placement? Outer)
{
    /// <summary>How many blocks deep this is; zero in model space.</summary>
    public int Depth => Outer is null ? 0 : Outer.Depth + 1;

    /// <summary>Model space, in a unit.</summary>
    public static Placement ModelSpace(double millimetresPerUnit) =>
        new(PlaneMap.Scaled(millimetresPerUnit), null, "", null);

    /// <summary>True when a block is already being drawn at this depth or above.</summary>
    public bool IsWithin(string block) =>
        string.Equals(Block, block, StringComparison.OrdinalIgnoreCase) || (Outer?.IsWithin(block) ?? false);

    /// <summary>An entity of a block as it is seen here: on the layer it takes, named by the way to it.</summary>
    /// <remarks>What lies on layer 0 in a block takes the layer of the INSERT.</remarks>
    public EntityRecord Seen(EntityRecord record) =>
        Insert is not { } insert
            ? record
            : record with
            {
                IsInBlock = true,
                Layer = record.Layer == "0" ? insert.Layer : record.Layer,
                Handle =
                    insert.Handle.Length > 0 && record.Handle.Length > 0
                        ? $"{insert.Handle}/{record.Handle}"
                        : record.Handle,
            };
}
