using System.CommandLine;
using Flushback.Load;

// dotnet run -c Release --project tests/Flushback.Load -- --seconds 60 --callers 8
Option<int> seconds = new("--seconds") { Description = "How long to call, in seconds.", DefaultValueFactory = _ => 60 };
Option<int> callers = new("--callers")
{
    Description = "Callers, each with a connection of its own and one call at a time.",
    DefaultValueFactory = _ => 8,
};
Option<int> every = new("--every")
{
    Description = "Prints a row every so many seconds.",
    DefaultValueFactory = _ => 10,
};
RootCommand command = new("Calls a service on this machine as fast as it answers, and tells how fast that is.")
{
    seconds,
    callers,
    every,
};
command.SetAction(
    async (parsed, cancellation) =>
    {
        await using ServiceProcess service = await ServiceProcess.StartAsync(cancellation);
        LoadRun run = new(service, parsed.GetValue(callers));
        return await run.RunAsync(
            TimeSpan.FromSeconds(parsed.GetValue(seconds)),
            TimeSpan.FromSeconds(parsed.GetValue(every)),
            cancellation
        )
            ? 0
            : 1;
    }
);
return await command.Parse(args).InvokeAsync();
