using System.Collections.Immutable;

namespace Flushback.Inspection.Repair;

/// <summary>The entities of a chain in the order of travel, each a slot of consecutive edges, and which are mended together.</summary>
internal sealed class EntitySlots
{
    private readonly ImmutableArray<string> _names;
    private readonly int[] _slotOf;
    private readonly int[] _firstOf;
    private readonly int[] _group;

    /// <param name="names">For each edge the name of its entity.</param>
    public EntitySlots(ImmutableArray<string> names)
    {
        _names = names;
        _slotOf = new int[names.Length];
        List<int> first = [0];
        for (int i = 1; i < names.Length; i++)
        {
            if (names[i] != names[i - 1])
            {
                first.Add(i);
            }

            _slotOf[i] = first.Count - 1;
        }

        _firstOf = [.. first];
        _group = [.. Enumerable.Range(0, _firstOf.Length)];
    }

    /// <summary>How many entities there are.</summary>
    public int Count => _firstOf.Length;

    /// <summary>The slot of an edge; edges past the end of a closed chain are those from its start.</summary>
    public int Of(int edge) => _slotOf[edge % _slotOf.Length];

    /// <summary>The first edge of a slot.</summary>
    public int First(int slot) => _firstOf[slot];

    /// <summary>How many edges a slot has.</summary>
    public int EdgesIn(int slot) => (slot + 1 < Count ? _firstOf[slot + 1] : _slotOf.Length) - _firstOf[slot];

    /// <summary>True for the first edge of an entity.</summary>
    public bool IsFirst(int edge) => First(Of(edge)) == edge % _slotOf.Length;

    /// <summary>The name of a slot's entity.</summary>
    public string Name(int slot) => _names[_firstOf[slot]];

    /// <summary>The slot of a name; -1 when there is none.</summary>
    public int Named(string name) => Array.FindIndex(_firstOf, edge => _names[edge] == name);

    /// <summary>What slots that are mended together have in common.</summary>
    public int GroupOf(int slot)
    {
        while (_group[slot] != slot)
        {
            slot = _group[slot];
        }

        return slot;
    }

    /// <summary>Has two slots mended together or not at all.</summary>
    public void Join(int one, int other)
    {
        (int first, int second) = (GroupOf(one), GroupOf(other));
        _group[Math.Max(first, second)] = Math.Min(first, second);
    }
}
