using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using Flushback.Cli.Commands;
using Flushback.Cli.Regression.Baselines;

namespace Flushback.Cli.Regression.Running;

/// <summary>
/// What a run has finished, a line an item, written as it is finished: a run that is ended by force and begun again does
/// not ask for it a second time.
/// </summary>
/// <remarks>
/// An item is found again by the hash of its request, which holds file and options, and the build of the service. A last
/// line that was cut off is no line.
/// </remarks>
internal sealed class Journal : IDisposable
{
    /// <summary>Name of the file, beside the results or in the library's folder; hidden, so that it is no item.</summary>
    public const string FileName = ".flushback-regress.jsonl";

    private readonly FileStream _file;
    private readonly Dictionary<string, Answered> _finished;

    private readonly HashSet<string> _found;

    private Journal(FileStream file, Dictionary<string, Answered> finished)
    {
        (_file, _finished) = (file, finished);
        _found = [.. finished.Keys.Select(key => key.Split(' ')[0])];
    }

    /// <summary>Opens the journal of a folder.</summary>
    /// <param name="folder">Where it lies.</param>
    /// <param name="isFresh">True to forget what an earlier run has finished.</param>
    /// <exception cref="BadInputException">It cannot be written, or another run has it.</exception>
    public static Journal Open(string folder, bool isFresh)
    {
        string path = Path.Combine(folder, FileName);
        try
        {
            Directory.CreateDirectory(folder);
            FileStream file = new(path, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None);
            if (isFresh)
            {
                file.SetLength(0);
            }

            Dictionary<string, Answered> finished = Read(file);
            return new Journal(file, finished);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            throw new BadInputException(
                $"'{path}' cannot be written: {fault.Message} Let another run on this folder end first, or name a folder of yours with --out."
            );
        }
    }

    /// <summary>Whether an earlier run has finished an item, by whatever build.</summary>
    public bool Knows(string key) => _found.Contains(key);

    /// <summary>What became of an item in an earlier run; null when it was not finished, or by another build.</summary>
    public Answered? Find(string key, string build) => _finished.GetValueOrDefault($"{key} {build}");

    /// <summary>Keeps what became of an item; once this returns it outlives the program.</summary>
    public void Add(string key, string build, string path, Answered answered)
    {
        JsonObject line = new()
        {
            ["item"] = path,
            ["key"] = $"{key} {build}",
            ["kept"] = answered.Kept is { } kept ? JsonNode.Parse(BaselineText.Write(kept)) : null,
            ["refused"] = new JsonArray([.. answered.Refused.Select(sentence => JsonValue.Create(sentence))]),
        };
        _file.Write(Encoding.UTF8.GetBytes(line.ToJsonString() + "\n"));
        _file.Flush();
        _finished[$"{key} {build}"] = answered;
    }

    /// <summary>Takes the journal away: the run has come to its end.</summary>
    public void Remove()
    {
        string path = _file.Name;
        _file.Dispose();
        File.Delete(path);
    }

    /// <inheritdoc/>
    public void Dispose() => _file.Dispose();

    private static Dictionary<string, Answered> Read(FileStream file)
    {
        Dictionary<string, Answered> finished = [];
        using StreamReader reader = new(file, Encoding.UTF8, leaveOpen: true);
        string all = reader.ReadToEnd();
        int whole = all.LastIndexOf('\n') + 1;
        foreach (string line in all[..whole].Split('\n', StringSplitOptions.RemoveEmptyEntries))
        {
            if (Read(line) is { } read)
            {
                finished[read.Key] = read.Answered;
            }
        }

        // What comes next begins a line of its own.
        file.SetLength(Encoding.UTF8.GetByteCount(all[..whole]));
        file.Seek(0, SeekOrigin.End);
        return finished;
    }

    private static (string Key, Answered Answered)? Read(string line)
    {
        try
        {
            JsonNode read = JsonNode.Parse(line)!;
            Snapshot? kept = read["kept"] is { } snapshot ? BaselineText.Read(snapshot.ToJsonString()) : null;
            return (
                read["key"]!.GetValue<string>(),
                new Answered(kept, [.. read["refused"]!.AsArray().Select(sentence => sentence!.GetValue<string>())])
            );
        }
        catch (Exception damaged)
            when (damaged is JsonException or FormatException or InvalidOperationException or NullReferenceException)
        {
            return null;
        }
    }
}
