namespace Flushback.Deployment.Tests.Running;

/// <summary>What the image holds, built once by the script that the image uses.</summary>
public sealed class PublishedService : IAsyncLifetime
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("flushback-published-");

    /// <summary>The folder.</summary>
    public string Folder => Path.Combine(_folder.FullName, "app");

    /// <summary>The program in it.</summary>
    public string Program => Path.Combine(Folder, "Flushback.Service");

    /// <inheritdoc/>
    public async Task InitializeAsync()
    {
        (int exitCode, string printed) = await StartedProgram.RunAsync(Repository.PathOf("docker/publish.sh"), Folder);
        Assert.True(exitCode == 0, printed);

        // Others than the one who built it are to run it.
        await StartedProgram.RunAsync("chmod", "755", _folder.FullName);
    }

    /// <inheritdoc/>
    public Task DisposeAsync()
    {
        _folder.Delete(recursive: true);
        return Task.CompletedTask;
    }
}

/// <summary>The tests that share what was published.</summary>
[CollectionDefinition(Name)]
public sealed class Published : ICollectionFixture<PublishedService>
{
    /// <summary>Name of the collection.</summary>
    public const string Name = "published";
}
