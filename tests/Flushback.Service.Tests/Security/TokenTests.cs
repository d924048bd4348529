using System.Net;
using Flushback.Service.Security;
using Flushback.Service.Tests.Hosting;
using Flushback.Service.Tests.Inputs;
using Grpc.Core;
using Grpc.Health.V1;
using Grpc.Reflection.V1Alpha;
using Microsoft.Extensions.Logging.Abstractions;

namespace Flushback.Service.Tests.Security;

public sealed class TokenTests : IAsyncLifetime
{
    private const string Token = "0123456789abcdef0123456789abcdef";
    private readonly string _file = Path.GetTempFileName();
    private RunningService _service = null!;

    public async Task InitializeAsync()
    {
        await File.WriteAllTextAsync(_file, Token + "\n");
        _service = await RunningService.StartAsync($"--Security:TokenFile={_file}");
    }

    public async Task DisposeAsync()
    {
        await _service.DisposeAsync();
        File.Delete(_file);
    }

    [Theory]
    [InlineData(null)]
    [InlineData("")]
    [InlineData("Bearer")]
    [InlineData("Bearer 0123456789abcdef0123456789abcdeg")]
    [InlineData("Bearer 0123456789abcdef")]
    [InlineData("Basic 0123456789abcdef0123456789abcdef")]
    public async Task A_call_without_the_token_is_unauthenticated(string? authorization)
    {
        Metadata headers = authorization is null ? [] : new Metadata { { "authorization", authorization } };

        RpcException refused = await Assert.ThrowsAsync<RpcException>(async () =>
            await _service.Checker.CheckAsync(Requests.Outlines(), headers)
        );

        Assert.Equal(StatusCode.Unauthenticated, refused.StatusCode);
        Assert.StartsWith("The request has no token", refused.Status.Detail, StringComparison.Ordinal);
        Assert.DoesNotContain(Token, refused.Status.Detail, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_call_with_the_token_is_answered()
    {
        Wire.CheckResponse response = await _service.Checker.CheckAsync(Requests.Outlines(), Bearer(Token));

        Assert.Equal(3, response.Report.Stops.Count);
    }

    [Fact]
    public async Task Health_asks_for_no_token_and_reflection_does()
    {
        HealthCheckResponse health = await new Health.HealthClient(_service.Channel).CheckAsync(new());
        using var scan = new ServerReflection.ServerReflectionClient(_service.Channel).ServerReflectionInfo();

        RpcException refused = await Assert.ThrowsAsync<RpcException>(() => scan.ResponseStream.MoveNext(default));

        Assert.Equal(HealthCheckResponse.Types.ServingStatus.Serving, health.Status);
        Assert.Equal(StatusCode.Unauthenticated, refused.StatusCode);
    }

    [Fact]
    public async Task Without_the_token_nothing_but_grpc_is_answered_with_401()
    {
        using HttpClient client = new();
        using HttpRequestMessage request = new(HttpMethod.Get, _service.Address)
        {
            Version = HttpVersion.Version20,
            VersionPolicy = HttpVersionPolicy.RequestVersionExact,
        };

        using HttpResponseMessage response = await client.SendAsync(request);

        Assert.Equal(HttpStatusCode.Unauthorized, response.StatusCode);
    }

    [Fact]
    public async Task A_new_token_in_the_file_is_good_without_a_restart_and_the_old_one_is_not()
    {
        const string Next = "fedcba9876543210fedcba9876543210";
        await File.WriteAllTextAsync(_file, Next);
        File.SetLastWriteTimeUtc(_file, TimeProvider.System.GetUtcNow().UtcDateTime.AddMinutes(1));

        await Eventually.IsTrueAsync(async () => await StatusAsync(Next) == StatusCode.OK);

        Assert.Equal(StatusCode.Unauthenticated, await StatusAsync(Token));
    }

    [Fact]
    public void A_file_that_went_away_leaves_the_tokens_as_they_were()
    {
        Clock clock = new();
        TokenFile tokens = new(_file, clock, NullLogger.Instance);
        File.Delete(_file);
        clock.At = TimeSpan.FromMinutes(1);

        Assert.True(tokens.Holds(Token));
    }

    private async Task<StatusCode> StatusAsync(string token)
    {
        using AsyncUnaryCall<Wire.CheckResponse> call = _service.Checker.CheckAsync(Requests.Outlines(), Bearer(token));
        try
        {
            await call;
        }
        catch (RpcException refused)
        {
            return refused.StatusCode;
        }

        return StatusCode.OK;
    }

    private sealed class Clock : TimeProvider
    {
        public TimeSpan At { get; set; }

        public override long TimestampFrequency => TimeSpan.TicksPerSecond;

        public override long GetTimestamp() => At.Ticks;
    }

    private static Metadata Bearer(string token) => new() { { "authorization", $"Bearer {token}" } };
}
