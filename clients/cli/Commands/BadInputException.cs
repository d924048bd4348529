namespace Flushback.Cli.Commands;

/// <summary>Something the maker must put right before the program can go on; the message is for him.</summary>
internal sealed class BadInputException(string message) : Exception(message);
