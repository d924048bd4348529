using System.Net;
using System.Net.Http.Headers;
using System.Net.Sockets;
using CsCheck;
using Flushback.Deployment.Tests.Running;
using Flushback.Service.Tests.Hosting;
using Flushback.Service.Tests.Inputs;
using Google.Protobuf;
using Grpc.Core;
using Grpc.Net.Client;
using Grpc.Reflection.V1Alpha;

namespace Flushback.Deployment.Tests.Abuse;

/// <summary>What no honest client does: each with its status, and after each a good check is answered as ever.</summary>
[Collection(Published.Name)]
public sealed class AbuseTests(PublishedService published) : IAsyncLifetime
{
    private const string Token = "0123456789abcdef0123456789abcdef";
    private const int LimitBytes = 4 * 1024 * 1024;

    // Of the service's processor time: far above the few milliseconds of a check, far below what was asked for before it.
    private static readonly TimeSpan _most = TimeSpan.FromSeconds(5);

    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("flushback-abuse-");
    private Replica _replica = null!;

    public async Task InitializeAsync()
    {
        string tokens = Path.Combine(_folder.FullName, "tokens");
        await File.WriteAllTextAsync(tokens, Token);
        _replica = await Replica.StartAsync(
            published,
            $"--Security:TokenFile={tokens}",
            // Hundreds of requests at once may wait for each other as long as a slow machine takes.
            "--Limits:Seconds=600",
            "--Web:Url=http://127.0.0.1:0"
        );
    }

    public async Task DisposeAsync()
    {
        await AssertAnswersAsync();
        await _replica.DisposeAsync();
        Assert.DoesNotContain("Unhandled", _replica.Program.Printed, StringComparison.Ordinal);
        _folder.Delete(recursive: true);
    }

    [Theory]
    [InlineData("/flushback.v1.ProfileChecker/Check")]
    [InlineData("/flushback.v1.ProfileInspector/Inspect")]
    [InlineData("/flushback.v1.BenchSimulator/Simulate")]
    [InlineData("/flushback.v1.BenchSimulator/Plan")]
    public async Task Bytes_that_are_no_message_are_refused_and_tell_nothing_of_the_inside(string path)
    {
        (int Status, string Message)[] answers = await Task.WhenAll(
            Damaged(Good(path), 200).Select(bytes => SendAsync(Frame(bytes), path: path))
        );

        // What still happens to be a message is a request like any other.
        int[] expected = [(int)StatusCode.OK, (int)StatusCode.InvalidArgument, (int)StatusCode.ResourceExhausted];
        Assert.All(answers, answer => Assert.Contains(answer.Status, expected));
        Assert.All(answers, answer => Assert.DoesNotContain("Exception", answer.Message, StringComparison.Ordinal));
        Assert.Contains(answers, answer => answer.Status == (int)StatusCode.InvalidArgument);
    }

    [Fact]
    public async Task A_message_of_the_limit_is_read_and_of_one_byte_more_refused()
    {
        Assert.NotEqual((int)StatusCode.ResourceExhausted, (await SendAsync(Frame(OfBytes(LimitBytes)))).Status);
        Assert.Equal((int)StatusCode.ResourceExhausted, (await SendAsync(Frame(OfBytes(LimitBytes + 1)))).Status);
    }

    [Theory]
    [InlineData(new byte[0])]
    [InlineData(new byte[] { 0, 0, 0 })]
    [InlineData(new byte[] { 0, 0, 0, 0, 9, 1 })]
    [InlineData(new byte[] { 7, 0, 0, 0, 0 })]
    [InlineData(new byte[] { 0, 255, 255, 255, 255 })]
    [InlineData(new byte[] { 1, 0, 0, 0, 1, 1 })]
    public async Task A_frame_that_is_none_is_refused(byte[] frame)
    {
        (int status, string message) = await SendAsync(frame);

        Assert.NotEqual((int)StatusCode.OK, status);
        Assert.DoesNotContain("   at ", message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_thousand_streams_that_begin_a_message_and_never_end_it_are_ended()
    {
        using CancellationTokenSource hangUp = new();
        using SocketsHttpHandler handler = new() { EnableMultipleHttp2Connections = true };
        using HttpClient client = new(handler) { Timeout = Timeout.InfiniteTimeSpan };
        Task<bool>[] streams = [.. Enumerable.Range(0, 1000).Select(_ => BeginAsync(client, hangUp.Token))];

        await AssertAnswersAsync();
        await Eventually.IsTrueAsync(() => streams.All(stream => stream.IsCompleted));

        Assert.All(await Task.WhenAll(streams), Assert.True);
        await hangUp.CancelAsync();
    }

    [Fact]
    public async Task Calls_that_are_cancelled_as_soon_as_they_are_made_leave_no_work_behind()
    {
        using GrpcChannel channel = GrpcChannel.ForAddress(_replica.Address);
        Wire.ProfileChecker.ProfileCheckerClient checker = new(channel);
        Wire.CheckRequest request = Checks.OfSeconds();
        for (int i = 0; i < 200; i++)
        {
            using CancellationTokenSource soon = new(TimeSpan.FromMilliseconds(i % 20));
            try
            {
                await checker.CheckAsync(request, Bearer(), cancellationToken: soon.Token);
            }
            catch (RpcException cancelled)
            {
                Assert.Equal(StatusCode.Cancelled, cancelled.StatusCode);
            }
        }

        await AssertAnswersAsync();
    }

    [Fact]
    public async Task A_deadline_of_a_millisecond_passes()
    {
        using GrpcChannel channel = GrpcChannel.ForAddress(_replica.Address);

        RpcException late = await Assert.ThrowsAsync<RpcException>(async () =>
            await new Wire.ProfileChecker.ProfileCheckerClient(channel).CheckAsync(
                Checks.OfSeconds(),
                Bearer(),
                TimeProvider.System.GetUtcNow().UtcDateTime.AddMilliseconds(1)
            )
        );

        Assert.Equal(StatusCode.DeadlineExceeded, late.StatusCode);
    }

    [Fact]
    public async Task A_wrong_token_is_unauthenticated_and_its_message_is_not_read()
    {
        (int status, _) = await SendAsync(Frame(OfBytes(LimitBytes + 1)), "wrong-token-wrong-token");

        Assert.Equal((int)StatusCode.Unauthenticated, status);
    }

    [Fact]
    public async Task A_scan_by_reflection_without_the_token_learns_nothing()
    {
        using GrpcChannel channel = GrpcChannel.ForAddress(_replica.Address);
        using var scan = new ServerReflection.ServerReflectionClient(channel).ServerReflectionInfo();
        await scan.RequestStream.WriteAsync(new ServerReflectionRequest { ListServices = "*" });

        RpcException refused = await Assert.ThrowsAsync<RpcException>(() => scan.ResponseStream.MoveNext(default));

        Assert.Equal(StatusCode.Unauthenticated, refused.StatusCode);
    }

    [Fact]
    public async Task A_method_that_is_none_is_unimplemented()
    {
        (int status, _) = await SendAsync(Frame([]), path: "/flushback.v1.ProfileChecker/Grind");

        Assert.Equal((int)StatusCode.Unimplemented, status);
    }

    [Theory]
    [InlineData("GET / HTTP/1.1\r\nHost: x\r\n\r\n")]
    [InlineData(
        "\u0016\u0003\u0001\u0002\0\u0001\0\u0001\u00fc\u0003\u0003 a greeting by TLS, which is not spoken here"
    )]
    [InlineData("PRI * HTTP/2.0\r\n\r\nSM\r\n\r\nnonsense nonsense nonsense")]
    public async Task Another_protocol_is_told_nothing(string said)
    {
        using TcpClient client = new();
        await client.ConnectAsync(_replica.Address.Host, _replica.Address.Port);
        NetworkStream stream = client.GetStream();
        await stream.WriteAsync(System.Text.Encoding.Latin1.GetBytes(said));

        // Hung up on at once, or, where it may still be the beginning of something, in time.
        using CancellationTokenSource enough = new(TimeSpan.FromSeconds(3));
        using MemoryStream answer = new();
        try
        {
            await stream.CopyToAsync(answer, enough.Token);
        }
        catch (Exception ended) when (ended is IOException or OperationCanceledException)
        {
            // What was told until then counts.
        }

        Assert.DoesNotContain(
            "Flushback",
            System.Text.Encoding.Latin1.GetString(answer.ToArray()),
            StringComparison.OrdinalIgnoreCase
        );
    }

    private async Task AssertAnswersAsync()
    {
        TimeSpan before = _replica.Program.ProcessorTime;
        Wire.CheckResponse response = await _replica.Checker.CheckAsync(Requests.Outlines(), Bearer());
        Assert.Equal(3, response.Report.Stops.Count);
        Assert.InRange(_replica.Program.ProcessorTime - before, TimeSpan.Zero, _most);
    }

    private static Metadata Bearer() => new() { { "authorization", $"Bearer {Token}" } };

    /// <summary>A request of a method as an honest client sends it.</summary>
    private static byte[] Good(string path)
    {
        IMessage request = path switch
        {
            "/flushback.v1.ProfileInspector/Inspect" => SheetRequests.Of(SheetRequests.Flawed()),
            "/flushback.v1.BenchSimulator/Simulate" => PassRequests.Of(PassRequests.OfEachKind()),
            "/flushback.v1.BenchSimulator/Plan" => PlanRequests.High(),
            _ => Requests.Outlines(),
        };
        return request.ToByteArray();
    }

    /// <summary>Messages with bytes changed, cut off or put in.</summary>
    private static byte[][] Damaged(byte[] good, int count)
    {
        Gen<byte[]> damaged = Gen.Select(Gen.Int[0, good.Length - 1], Gen.Byte.Array[1, 16], Gen.Int[0, 2])
            .Select(
                (at, bytes, how) =>
                    how switch
                    {
                        0 => [.. good[..at], .. bytes, .. good[Math.Min(good.Length, at + bytes.Length)..]],
                        1 => good[..at],
                        _ => (byte[])[.. good[..at], .. bytes, .. good[at..]],
                    }
            );
        return damaged.Array[count].Single();
    }

    /// <summary>A message of exactly so many bytes: a drawing that is none.</summary>
    private static byte[] OfBytes(int bytes)
    {
        Wire.CheckRequest request = Requests.Drawing(new byte[bytes]);
        int over = request.CalculateSize() - bytes;
        byte[] message = Requests.Drawing(new byte[bytes - over]).ToByteArray();
        Assert.Equal(bytes, message.Length);
        return message;
    }

    private static byte[] Frame(byte[] message) =>
        [0, .. BitConverter.GetBytes(IPAddress.HostToNetworkOrder(message.Length)), .. message];

    private async Task<(int Status, string Message)> SendAsync(
        byte[] body,
        string token = Token,
        string path = "/flushback.v1.ProfileChecker/Check"
    )
    {
        using HttpClient client = new() { Timeout = Timeout.InfiniteTimeSpan };
        using HttpRequestMessage request = Post(path, new ByteArrayContent(body), token);
        using HttpResponseMessage response = await client.SendAsync(request);
        await response.Content.ReadAsByteArrayAsync();
        string status = Header(response, "grpc-status") ?? throw new InvalidOperationException($"{response}");
        return (
            int.Parse(status, System.Globalization.CultureInfo.InvariantCulture),
            Uri.UnescapeDataString(Header(response, "grpc-message") ?? "")
        );
    }

    /// <summary>Sends the beginning of a message and then nothing; true when the service ends the stream.</summary>
    private async Task<bool> BeginAsync(HttpClient client, CancellationToken hangUp)
    {
        using HttpRequestMessage request = Post("/flushback.v1.ProfileChecker/Check", new HalfOpen(hangUp), Token);
        try
        {
            using HttpResponseMessage response = await client.SendAsync(
                request,
                HttpCompletionOption.ResponseHeadersRead,
                hangUp
            );
            return true;
        }
        catch (HttpRequestException)
        {
            return true;
        }
    }

    private HttpRequestMessage Post(string path, HttpContent content, string token)
    {
        HttpRequestMessage request = new(HttpMethod.Post, new Uri(_replica.Address, path))
        {
            Version = HttpVersion.Version20,
            VersionPolicy = HttpVersionPolicy.RequestVersionExact,
            Content = content,
        };
        content.Headers.ContentType = new MediaTypeHeaderValue("application/grpc");
        request.Headers.Add("te", "trailers");
        request.Headers.Authorization = new AuthenticationHeaderValue("Bearer", token);
        return request;
    }

    private static string? Header(HttpResponseMessage response, string name) =>
        response.TrailingHeaders.TryGetValues(name, out var trailer) ? trailer.First()
        : response.Headers.TryGetValues(name, out var header) ? header.First()
        : null;

    private sealed class HalfOpen(CancellationToken hangUp) : HttpContent
    {
        protected override async Task SerializeToStreamAsync(Stream stream, TransportContext? context)
        {
            await stream.WriteAsync((byte[])[0, 0, 0, 16, 0, 1, 2, 3], hangUp);
            await stream.FlushAsync(hangUp);
            await Task.Delay(Timeout.Infinite, hangUp);
        }

        protected override bool TryComputeLength(out long length)
        {
            length = 0;
            return false;
        }
    }
}
