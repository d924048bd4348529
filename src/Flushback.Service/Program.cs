using Flushback.Service;
using Flushback.Service.Hosting;

if (args is [HealthProbe.Command, .. var asked])
{
    return await HealthProbe.RunAsync(asked);
}

try
{
    await FlushbackHost.Build(args).RunAsync();
    return 0;
}
catch (Exception fault) when (StartRefusal.SentenceOf(fault) is { } sentence)
{
    await Console.Error.WriteLineAsync(sentence);
    return 2;
}
