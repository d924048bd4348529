using System.Globalization;
using Flushback.Deployment.Tests.Running;
using Flushback.Service.Hosting;
using Flushback.Service.Limits;
using k8s;
using k8s.Models;

namespace Flushback.Deployment.Tests.Manifests;

/// <summary>The files under docker/, held against the schemas of what reads them and against the service.</summary>
public sealed class ManifestTests
{
    private static string[] Files =>
        [
            .. Directory.EnumerateFiles(Repository.PathOf("docker/kubernetes"), "*.yaml").Order(StringComparer.Ordinal),
            Repository.PathOf("docker/compose.yaml"),
            Repository.PathOf("docker/Dockerfile"),
        ];

    [Fact]
    public async Task Every_file_fits_its_schema()
    {
        (int exitCode, string printed) = await CheckAsync(Files);

        Assert.True(exitCode == 0, printed);
        Assert.Equal(7, Files.Length);
    }

    [Theory]
    [InlineData("kubernetes/deployment.yaml", "containers:", "boxes:")]
    [InlineData("kubernetes/deployment.yaml", "maxSurge: 1", "maxSurge: [1]")]
    [InlineData("kubernetes/service.yaml", "kind: Service", "kind: Servant")]
    [InlineData("compose.yaml", "restart: unless-stopped", "restrt: unless-stopped")]
    [InlineData("Dockerfile", "USER 1654", "USR 1654")]
    public async Task A_file_that_does_not_fit_is_found(string file, string right, string wrong)
    {
        string copy = Path.Combine(
            Directory.CreateTempSubdirectory("flushback-manifest-").FullName,
            Path.GetFileName(file)
        );
        string text = await File.ReadAllTextAsync(Repository.PathOf($"docker/{file}"));
        Assert.Contains(right, text, StringComparison.Ordinal);
        await File.WriteAllTextAsync(copy, text.Replace(right, wrong, StringComparison.Ordinal));

        (int exitCode, string printed) = await CheckAsync([copy]);
        Directory.Delete(Path.GetDirectoryName(copy)!, recursive: true);

        Assert.Equal(1, exitCode);
        Assert.Contains(Path.GetFileName(file), printed, StringComparison.Ordinal);
    }

    [Fact]
    public void No_manifest_has_a_field_that_a_cluster_does_not_know()
    {
        // The schemas let unknown fields pass; a strict reader does not.
        Read<V1Deployment>("deployment");
        Read<V1Service>("service");
        Read<V1PodDisruptionBudget>("pod-disruption-budget");
        Read<V2HorizontalPodAutoscaler>("horizontal-pod-autoscaler");
        Read<V1NetworkPolicy>("network-policy");
        string misspelt = Text("deployment").Replace("readOnlyRoot", "readonlyRoot", StringComparison.Ordinal);

        Assert.ThrowsAny<Exception>(() => KubernetesYaml.Deserialize<V1Deployment>(misspelt, strict: true));
    }

    [Fact]
    public void The_manifests_agree_with_each_other()
    {
        V1Deployment deployment = Read<V1Deployment>("deployment");
        V1Service service = Read<V1Service>("service");
        IDictionary<string, string> labels = deployment.Spec.Template.Metadata.Labels;
        V1Container container = Assert.Single(deployment.Spec.Template.Spec.Containers);

        Assert.Equal(deployment.Spec.Selector.MatchLabels, labels);
        Assert.Equal(service.Spec.Selector, labels);
        Assert.Equal(Read<V1PodDisruptionBudget>("pod-disruption-budget").Spec.Selector.MatchLabels, labels);
        Assert.Equal(Read<V1NetworkPolicy>("network-policy").Spec.PodSelector.MatchLabels, labels);
        Assert.Equal(
            deployment.Metadata.Name,
            Read<V2HorizontalPodAutoscaler>("horizontal-pod-autoscaler").Spec.ScaleTargetRef.Name
        );
        Assert.Equal(container.Ports[0].ContainerPort, service.Spec.Ports[0].Port);
        Assert.Equal(container.Ports[0].Name, service.Spec.Ports[0].TargetPort.Value);
    }

    [Fact]
    public void The_deployment_agrees_with_the_service()
    {
        V1PodSpec pod = Read<V1Deployment>("deployment").Spec.Template.Spec;
        V1Container container = pod.Containers[0];
        double notice = double.Parse(
            container.Env.Single(variable => variable.Name == "Drain__NoticeSeconds").Value,
            CultureInfo.InvariantCulture
        );

        Assert.Equal(
            ("live", "live", "ready"),
            (
                container.StartupProbe.Grpc.Service,
                container.LivenessProbe.Grpc.Service,
                container.ReadinessProbe.Grpc.Service
            )
        );
        Assert.All(
            (V1Probe[])[container.StartupProbe, container.LivenessProbe, container.ReadinessProbe],
            probe => Assert.Equal(container.Ports[0].ContainerPort, probe.Grpc.Port)
        );
        Assert.True(pod.TerminationGracePeriodSeconds > notice + new DrainOptions().FinishSeconds);
        Assert.True(notice > container.ReadinessProbe.PeriodSeconds * container.ReadinessProbe.FailureThreshold);
        Assert.True(new DrainOptions().FinishSeconds >= new ServiceLimits().Seconds);
        Assert.Contains(
            $"EXPOSE {container.Ports[0].ContainerPort}",
            File.ReadAllText(Repository.PathOf("docker/Dockerfile")),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Nothing_runs_as_root_or_writes_its_root()
    {
        V1PodSpec pod = Read<V1Deployment>("deployment").Spec.Template.Spec;
        V1SecurityContext context = pod.Containers[0].SecurityContext;

        Assert.True(pod.SecurityContext.RunAsNonRoot);
        Assert.True(context.ReadOnlyRootFilesystem);
        Assert.False(context.AllowPrivilegeEscalation);
        Assert.Equal(["ALL"], context.Capabilities.Drop);
        Assert.Matches(@"(?m)^USER [1-9]\d*:[1-9]\d*$", File.ReadAllText(Repository.PathOf("docker/Dockerfile")));
    }

    private static T Read<T>(string name) => KubernetesYaml.Deserialize<T>(Text(name), strict: true);

    private static string Text(string name) => File.ReadAllText(Repository.PathOf($"docker/kubernetes/{name}.yaml"));

    private static Task<(int ExitCode, string Printed)> CheckAsync(string[] files) =>
        StartedProgram.RunAsync("node", [Repository.PathOf("tests/interop/manifests/check.mjs"), .. files]);
}
