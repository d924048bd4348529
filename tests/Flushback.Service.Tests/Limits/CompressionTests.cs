using System.IO.Compression;
using System.Net;
using System.Net.Http.Headers;
using Flushback.Service.Tests.Hosting;
using Flushback.Service.Tests.Inputs;

namespace Flushback.Service.Tests.Limits;

/// <summary>Messages whose size shows only when they are unpacked.</summary>
public sealed class CompressionTests
{
    private const int Gigabyte = 1024 * 1024 * 1024;
    private const int ResourceExhausted = 8;

    [Fact]
    public async Task A_gigabyte_packed_into_a_megabyte_is_refused_without_being_unpacked()
    {
        RunningService service = await RunningService.StartAsync();
        byte[] packed = Packed(Gigabyte);
        Assert.InRange(packed.Length, 500_000, 2_000_000);
        long before = GC.GetTotalAllocatedBytes();

        (string? status, string? details) = await SendAsync(service, packed);

        Assert.Equal($"{ResourceExhausted}", status);
        Assert.Contains("MESSAGE_TOO_LARGE", details, StringComparison.Ordinal);
        Assert.InRange(GC.GetTotalAllocatedBytes() - before, 0, 128L * 1024 * 1024);
        await service.Checker.CheckAsync(Requests.Outlines());
        await service.DisposeAsync();
    }

    [Fact]
    public async Task A_packed_message_within_the_limit_is_read()
    {
        RunningService service = await RunningService.StartAsync();
        using MemoryStream packed = new();
        using (GZipStream gzip = new(packed, CompressionLevel.Optimal))
        {
            gzip.Write(Google.Protobuf.MessageExtensions.ToByteArray(Requests.Outlines()));
        }

        (string? status, _) = await SendAsync(service, packed.ToArray());

        Assert.Equal("0", status);
        await service.DisposeAsync();
    }

    private static byte[] Packed(int bytes)
    {
        using MemoryStream packed = new();
        using (GZipStream gzip = new(packed, CompressionLevel.SmallestSize))
        {
            byte[] zeros = new byte[1024 * 1024];
            for (int written = 0; written < bytes; written += zeros.Length)
            {
                gzip.Write(zeros);
            }
        }

        return packed.ToArray();
    }

    private static async Task<(string? Status, string? Details)> SendAsync(RunningService service, byte[] packed)
    {
        byte[] frame = [1, .. BitConverter.GetBytes(IPAddress.HostToNetworkOrder(packed.Length)), .. packed];
        using HttpClient client = new();
        using HttpRequestMessage request = new(
            HttpMethod.Post,
            new Uri(service.Address, "/flushback.v1.ProfileChecker/Check")
        )
        {
            Version = HttpVersion.Version20,
            VersionPolicy = HttpVersionPolicy.RequestVersionExact,
            Content = new ByteArrayContent(frame),
        };
        request.Content.Headers.ContentType = new MediaTypeHeaderValue("application/grpc");
        request.Headers.Add("grpc-encoding", "gzip");
        request.Headers.Add("te", "trailers");
        using HttpResponseMessage response = await client.SendAsync(request);
        await response.Content.ReadAsByteArrayAsync();
        string? details = Header(response, "grpc-status-details-bin");
        return (
            Header(response, "grpc-status"),
            details is null
                ? null
                : System.Text.Encoding.UTF8.GetString(
                    Convert.FromBase64String(details.PadRight((details.Length + 3) / 4 * 4, '='))
                )
        );
    }

    private static string? Header(HttpResponseMessage response, string name) =>
        response.TrailingHeaders.TryGetValues(name, out var trailer) ? trailer.First()
        : response.Headers.TryGetValues(name, out var header) ? header.First()
        : null;
}
