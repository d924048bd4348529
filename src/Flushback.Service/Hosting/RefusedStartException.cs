namespace Flushback.Service.Hosting;

/// <summary>The service does not start as it is configured; the message tells the operator why, in one sentence.</summary>
public sealed class RefusedStartException(string sentence) : Exception(sentence);
