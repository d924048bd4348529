using System.Text.Json;
using System.Text.RegularExpressions;
using Flushback.Deployment.Tests.Running;
using Flushback.Service.Tests.Hosting;
using Flushback.Service.Tests.Inputs;
using Grpc.Core;

namespace Flushback.Deployment.Tests.Processes;

/// <summary>The published program, as an operator meets it.</summary>
[Collection(Published.Name)]
public sealed class StartTests(PublishedService published)
{
    [Theory]
    [InlineData("--urls", "http://0.0.0.0:0", "without TLS")]
    [InlineData("--Limits:Vertices", "7", "between 8 and")]
    [InlineData("--Limits:Vertexes", "5000", "Vertexes")]
    [InlineData("--Security:TokenFile", "/nowhere", "'/nowhere'")]
    public async Task What_it_cannot_start_with_is_told_in_a_sentence_with_exit_code_2(
        string setting,
        string value,
        string told
    )
    {
        (int exitCode, string printed) = await StartedProgram.RunAsync(published.Program, setting, value);

        Assert.Equal(2, exitCode);
        Assert.Contains(told, printed, StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", printed, StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_address_that_is_taken_is_told_in_a_sentence()
    {
        await using Replica replica = await Replica.StartAsync(published);

        (int exitCode, string printed) = await StartedProgram.RunAsync(
            published.Program,
            "--urls",
            replica.Address.GetLeftPart(UriPartial.Authority)
        );

        Assert.Equal(2, exitCode);
        Assert.Contains("address already in use", printed, StringComparison.Ordinal);
        Assert.DoesNotContain("   at Flushback", printed, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Logs_are_json_when_asked_for_and_name_the_refused_call()
    {
        await using Replica replica = await Replica.StartAsync(published, "--Logging:Console:FormatterName=json");

        await Assert.ThrowsAsync<RpcException>(async () => await replica.Checker.CheckAsync(new Wire.CheckRequest()));
        replica.Program.Terminate();
        await replica.Program.EndAsync();

        string[] lines = replica.Program.Printed.Split('\n', StringSplitOptions.RemoveEmptyEntries);
        JsonElement[] entries = [.. lines.Select(line => JsonDocument.Parse(line).RootElement)];
        Assert.DoesNotContain(entries, entry => entry.GetProperty("LogLevel").GetString() == "Warning");
        JsonElement refused = Assert.Single(
            entries,
            entry => entry.GetProperty("Message").GetString()!.Contains("refused", StringComparison.Ordinal)
        );
        JsonElement state = refused.GetProperty("State");
        Assert.Equal("flushback.v1.ProfileChecker/Check", state.GetProperty("Method").GetString());
        Assert.Equal("InvalidArgument", state.GetProperty("Status").GetString());
    }

    [Fact]
    public async Task The_health_command_tells_containers_how_it_is()
    {
        await using Replica replica = await Replica.StartAsync(published);
        string address = replica.Address.GetLeftPart(UriPartial.Authority);
        using KeptPort nobodys = new();

        // It waits three seconds for an answer and says 1 then; whoever probes asks again.
        await Eventually.IsTrueAsync(async () =>
            (await StartedProgram.RunAsync(published.Program, "health", address)).ExitCode == 0
        );
        await Eventually.IsTrueAsync(async () =>
            (await StartedProgram.RunAsync(published.Program, "health", address, "live")).ExitCode == 0
        );
        Assert.Equal(
            1,
            (await StartedProgram.RunAsync(published.Program, "health", $"http://127.0.0.1:{nobodys.Number}")).ExitCode
        );
        Assert.Equal(1, (await StartedProgram.RunAsync(published.Program, "health", "nowhere")).ExitCode);
    }

    [Fact]
    public async Task It_answers_with_the_images_environment_as_nobody_on_a_root_that_cannot_be_written()
    {
        // What a container does, without one: no rights, no new ones, and not a folder that takes a file.
        KeptPort port = new();
        string[] environment =
        [
            .. ImageEnvironment(port.Number)
                .SelectMany(variable => (string[])["--setenv", variable.Name, variable.Value]),
        ];
        await using Replica replica = await Replica.OfAsync(
            StartedProgram.Start(
                "/usr/bin/setpriv",
                [
                    "--reuid=65534",
                    "--regid=65534",
                    "--clear-groups",
                    "--no-new-privs",
                    "--inh-caps=-all",
                    "/usr/bin/bwrap",
                    "--ro-bind",
                    "/",
                    "/",
                    "--dev",
                    "/dev",
                    "--proc",
                    "/proc",
                    .. environment,
                    published.Program,
                ]
            ),
            port
        );

        Wire.CheckResponse response = await replica.Checker.CheckAsync(Requests.Outlines());

        Assert.Equal(3, response.Report.Stops.Count);
    }

    /// <summary>What the Dockerfile sets, on loopback; and what its base sets, which must not matter.</summary>
    private static IEnumerable<(string Name, string Value)> ImageEnvironment(int port)
    {
        string dockerfile = File.ReadAllText(Repository.PathOf("docker/Dockerfile"));
        string set = Regex.Match(dockerfile, @"^ENV ((?:[^\n]*\\\n)*[^\n]*)", RegexOptions.Multiline).Groups[1].Value;
        string[] pairs = set.Split(
            (char[])[' ', '\n', '\\'],
            StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries
        );
        Assert.Contains("Kestrel__Endpoints__Grpc__Url=http://0.0.0.0:5210", pairs);
        return pairs
            .Select(pair => pair.Replace("0.0.0.0:5210", $"127.0.0.1:{port}", StringComparison.Ordinal))
            .Prepend("ASPNETCORE_HTTP_PORTS=8080")
            .Select(pair => pair.Split('=', 2))
            .Select(pair => (pair[0], pair[1]));
    }
}
