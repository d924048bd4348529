using System.Collections.Concurrent;
using System.Globalization;
using System.Threading.Channels;
using Flushback.Cli.Commands;
using Flushback.Cli.Regression.Items;
using Flushback.Contract.V1;
using Google.Rpc;
using Grpc.Core;

namespace Flushback.Cli.Regression.Running;

/// <summary>The items on one stream: which are to be sent, which are on their way, and what their answers are.</summary>
internal sealed class OneStream : IDisposable
{
    private readonly Channel<int> _toSend = Channel.CreateUnbounded<int>();
    private readonly ConcurrentDictionary<int, Sent> _underWay = new();
    private readonly IReadOnlyList<LibraryItem> _items;
    private readonly Task<string> _build;
    private readonly HashSet<int> _putOff = [];
    private readonly ItemRequests _requests;
    private readonly AnswerReading _reading;
    private readonly Answers _answers;
    private readonly SemaphoreSlim _room;
    private readonly Lock _lock = new();
    private int _left;
    private int _sent;

    /// <summary>A stream that is open.</summary>
    /// <param name="items">What is to be answered.</param>
    /// <param name="build">The build of the service at its other end, once it is told.</param>
    /// <param name="requests">Makes the requests.</param>
    /// <param name="reading">Makes of an answer what is kept.</param>
    /// <param name="answers">Takes what is kept.</param>
    /// <param name="ahead">How many items are on their way at most.</param>
    public OneStream(
        IReadOnlyList<LibraryItem> items,
        Task<string> build,
        ItemRequests requests,
        AnswerReading reading,
        Answers answers,
        int ahead
    )
    {
        (_items, _build, _requests, _reading, _answers) = (items, build, requests, reading, answers);
        _room = new SemaphoreSlim(ahead);
        _left = items.Count;
        for (int i = 0; i < items.Count; i++)
        {
            _toSend.Writer.TryWrite(i);
        }
    }

    /// <summary>True when every item is finished.</summary>
    public bool IsFinished => Volatile.Read(ref _left) == 0;

    /// <summary>The first sent of those that are not answered: what the contract blames where a stream is refused.</summary>
    public LibraryItem? FirstUnanswered =>
        _underWay.IsEmpty ? null : _items[_underWay.MinBy(sent => sent.Value.Order).Key];

    /// <summary>Sends every item, and those again for which there was no room, until all are answered.</summary>
    public async Task SendAsync(IClientStreamWriter<CheckManyRequest> stream, CancellationToken cancellation)
    {
        await foreach (int i in _toSend.Reader.ReadAllAsync(cancellation))
        {
            if (await ReadAsync(i, cancellation) is { } request)
            {
                await _room.WaitAsync(cancellation);
                request.ItemId = i.ToString(CultureInfo.InvariantCulture);
                await stream.WriteAsync(request, cancellation);
            }
        }

        await stream.CompleteAsync();
    }

    /// <summary>Takes an answer.</summary>
    public async Task TakeAsync(CheckManyResponse answer)
    {
        int i = int.Parse(answer.ItemId, CultureInfo.InvariantCulture);
        if (!_underWay.TryRemove(i, out Sent sent))
        {
            return;
        }

        _room.Release();
        if (RetryDelayOf(answer) is { } delay)
        {
            // Whoever is told to come again is not finished.
            _ = SendLaterAsync(i, delay);
            return;
        }

        string build = await _build;
        lock (_lock)
        {
            _answers.Add(_items[i], sent.Key, build, _reading.Read(_items[i], answer));
        }

        Finish();
    }

    /// <inheritdoc/>
    public void Dispose() => _room.Dispose();

    // The item to send; null when it is finished without.
    private async Task<CheckManyRequest?> ReadAsync(int i, CancellationToken cancellation)
    {
        try
        {
            CheckManyRequest request = await _requests.ReadAsync(_items[i], cancellation);
            string key = ItemRequests.KeyOf(request);
            bool isKnown = _answers.IsInJournal(key);
            if (isKnown && _sent == 0 && _putOff.Add(i))
            {
                // The build is needed to know whether it still holds, and a proxy may hold the headers back until
                // something was sent: first come those that have to be sent anyway.
                _toSend.Writer.TryWrite(i);
                return null;
            }

            if (!isKnown || _sent == 0 || !await TakeFromJournalAsync(i, key))
            {
                _underWay[i] = new Sent(key, _sent++);
                return request;
            }
        }
        catch (BadInputException bad)
        {
            lock (_lock)
            {
                _answers.Refuse(_items[i], bad.Message);
            }
        }

        Finish();
        return null;
    }

    private async Task<bool> TakeFromJournalAsync(int i, string key)
    {
        string build = await _build;
        lock (_lock)
        {
            return _answers.TakeFromJournal(_items[i], key, build);
        }
    }

    private async Task SendLaterAsync(int i, TimeSpan delay)
    {
        await Task.Delay(delay);
        _toSend.Writer.TryWrite(i);
    }

    private void Finish()
    {
        if (Interlocked.Decrement(ref _left) == 0)
        {
            _toSend.Writer.Complete();
        }
    }

    private static TimeSpan? RetryDelayOf(CheckManyResponse answer) =>
        answer.Error is { Code: (int)StatusCode.Unavailable } busy
            ? busy.Details.FirstOrDefault(detail => detail.Is(RetryInfo.Descriptor))
                ?.Unpack<RetryInfo>()
                .RetryDelay.ToTimeSpan()
                ?? TimeSpan.FromSeconds(1)
            : null;

    private readonly record struct Sent(string Key, int Order);
}
