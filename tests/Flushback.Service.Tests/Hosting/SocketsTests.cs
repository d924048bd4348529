using System.Net.Sockets;
using Flushback.Service.Tests.Inputs;
using Google.Protobuf;
using Grpc.Health.V1;
using Grpc.Net.Client;
using Grpc.Reflection.V1Alpha;
using Microsoft.AspNetCore.Builder;

namespace Flushback.Service.Tests.Hosting;

public sealed class SocketsTests(RunningService service) : IClassFixture<RunningService>
{
    [Fact]
    public async Task A_knife_that_reads_as_it_should_is_answered_over_tcp()
    {
        Wire.CheckResponse response = await service.Checker.CheckAsync(Requests.Outlines());

        Assert.Equal(
            [Wire.Stop.Open, Wire.Stop.HalfStop, Wire.Stop.Closed],
            response.Report.Stops.Select(stop => stop.Stop)
        );
        Assert.Equal("Wagtail", response.Report.Name);
    }

    [Fact]
    public async Task A_unix_socket_gives_the_same_bytes_as_tcp()
    {
        DirectoryInfo folder = Directory.CreateTempSubdirectory("flushback-test-");
        string path = Path.Combine(folder.FullName, "service");
        await using (WebApplication host = FlushbackHost.BuildOnSocket(path))
        {
            await host.StartAsync();
            using GrpcChannel channel = OpenSocket(path);
            Wire.CheckRequest request = Requests.Outlines(Wire.ArtifactKind.Json, Wire.ArtifactKind.Text);

            Wire.CheckResponse overSocket = await new Wire.ProfileChecker.ProfileCheckerClient(channel).CheckAsync(
                request
            );
            Wire.CheckResponse overTcp = await service.Checker.CheckAsync(request);

            Assert.Equal(overTcp.ToByteArray(), overSocket.ToByteArray());
        }

        Assert.False(File.Exists(path));
        folder.Delete(recursive: true);
    }

    [Theory]
    [InlineData("")]
    [InlineData("flushback.v1.ProfileChecker")]
    [InlineData("flushback.v1.ProfileInspector")]
    [InlineData("flushback.v1.BenchSimulator")]
    [InlineData("flushback.v1.ToleranceStudy")]
    public async Task Health_says_that_it_serves(string name)
    {
        HealthCheckResponse health = await new Health.HealthClient(service.Channel).CheckAsync(
            new HealthCheckRequest { Service = name }
        );

        Assert.Equal(HealthCheckResponse.Types.ServingStatus.Serving, health.Status);
    }

    [Fact]
    public async Task Reflection_lists_every_service()
    {
        using var call = new ServerReflection.ServerReflectionClient(service.Channel).ServerReflectionInfo();
        await call.RequestStream.WriteAsync(new ServerReflectionRequest { ListServices = "" });
        await call.ResponseStream.MoveNext(CancellationToken.None);

        string[] listed = [.. call.ResponseStream.Current.ListServicesResponse.Service.Select(service => service.Name)];
        Assert.Contains("flushback.v1.ProfileChecker", listed);
        Assert.Contains("flushback.v1.ProfileInspector", listed);
        Assert.Contains("flushback.v1.BenchSimulator", listed);
        Assert.Contains("flushback.v1.ToleranceStudy", listed);
    }

    private static GrpcChannel OpenSocket(string path) =>
        GrpcChannel.ForAddress(
            "http://localhost",
            new GrpcChannelOptions
            {
                HttpHandler = new SocketsHttpHandler
                {
                    ConnectCallback = async (_, cancellation) =>
                    {
                        Socket socket = new(AddressFamily.Unix, SocketType.Stream, ProtocolType.Unspecified);
                        await socket.ConnectAsync(new UnixDomainSocketEndPoint(path), cancellation);
                        return new NetworkStream(socket, ownsSocket: true);
                    },
                },
            }
        );
}
