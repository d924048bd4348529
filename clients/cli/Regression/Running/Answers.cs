using Flushback.Cli.Regression.Items;

namespace Flushback.Cli.Regression.Running;

/// <summary>What became of the items so far: kept in the journal, and told to whoever watches.</summary>
/// <param name="journal">Keeps it.</param>
/// <param name="progress">Watches.</param>
internal sealed class Answers(Journal journal, IProgress<int> progress)
{
    private readonly Dictionary<string, Answered> _all = [];

    /// <summary>How many items are finished.</summary>
    public int Count => _all.Count;

    /// <summary>How many of them were finished by an earlier run.</summary>
    public int FromBefore { get; private set; }

    /// <summary>All of them, by path.</summary>
    public IReadOnlyDictionary<string, Answered> All => _all;

    /// <summary>Whether an item is finished.</summary>
    public bool Has(LibraryItem item) => _all.ContainsKey(item.Path);

    /// <summary>An item could not even be asked for: its file or its settings are at fault.</summary>
    public void Refuse(LibraryItem item, string sentence) => Put(item, new Answered(null, [sentence]));

    /// <summary>Whether an earlier run has finished an item, by whatever build.</summary>
    public bool IsInJournal(string key) => journal.Knows(key);

    /// <summary>Takes what an earlier run has finished; false when it has not.</summary>
    public bool TakeFromJournal(LibraryItem item, string key, string build)
    {
        if (journal.Find(key, build) is not { } answered)
        {
            return false;
        }

        FromBefore++;
        Put(item, answered);
        return true;
    }

    /// <summary>An item is answered.</summary>
    /// <param name="item">Which.</param>
    /// <param name="key">The hash of its request.</param>
    /// <param name="build">Of the service that answered.</param>
    /// <param name="answered">What became of it.</param>
    public void Add(LibraryItem item, string key, string build, Answered answered)
    {
        journal.Add(key, build, item.Path, answered);
        Put(item, answered);
    }

    private void Put(LibraryItem item, Answered answered)
    {
        _all.Add(item.Path, answered);
        progress.Report(_all.Count);
    }
}
