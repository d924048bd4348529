using Flushback.Catalogue.Designs;
using Flushback.Service.Tests.Inputs;
using Grpc.Core;

namespace Flushback.Service.Tests.Streaming;

/// <summary>A library sent over one stream, and what came back.</summary>
internal static class Library
{
    /// <summary>An item with a check.</summary>
    public static Wire.CheckManyRequest Item(string id, Wire.CheckRequest? check = null) =>
        new() { ItemId = id, Check = check ?? Requests.Outlines() };

    /// <summary>So many items: three knives in turn, one of them as a drawing.</summary>
    public static IReadOnlyList<Wire.CheckManyRequest> Of(int count)
    {
        Wire.CheckRequest[] knives =
        [
            Requests.Outlines(),
            Requests.Outlines(KnifeCatalogue.Curlew.ToDrawn()),
            Requests.Drawing(LooseDrawing.Of(KnifeCatalogue.Wagtail.ToDrawn())),
        ];
        return [.. Enumerable.Range(0, count).Select(i => Item($"{i}", knives[i % knives.Length]))];
    }

    /// <summary>Sends every item and gathers the answers until the stream ends.</summary>
    public static async Task<List<Wire.CheckManyResponse>> CheckAsync(
        Wire.ProfileChecker.ProfileCheckerClient checker,
        IEnumerable<Wire.CheckManyRequest> items,
        CallOptions options = default
    )
    {
        using var call = checker.CheckMany(options);
        Task<List<Wire.CheckManyResponse>> answers = GatherAsync(call.ResponseStream);
        foreach (Wire.CheckManyRequest item in items)
        {
            await call.RequestStream.WriteAsync(item);
        }

        await call.RequestStream.CompleteAsync();
        return await answers;
    }

    /// <summary>The answers until the stream ends.</summary>
    public static async Task<List<Wire.CheckManyResponse>> GatherAsync(
        IAsyncStreamReader<Wire.CheckManyResponse> stream
    )
    {
        List<Wire.CheckManyResponse> answers = [];
        await foreach (Wire.CheckManyResponse answer in stream.ReadAllAsync())
        {
            answers.Add(answer);
        }

        return answers;
    }
}
