using Flushback.Service;

await FlushbackHost.Build(args).RunAsync();
