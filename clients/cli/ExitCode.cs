namespace Flushback.Cli;

/// <summary>How the program ends.</summary>
internal enum ExitCode
{
    /// <summary>Clean: nothing above a note.</summary>
    Clean = 0,

    /// <summary>There are findings above a note.</summary>
    Findings = 1,

    /// <summary>The input is not a knife or no drawing, or an option is wrong.</summary>
    BadInput = 2,

    /// <summary>No server answered, or it failed.</summary>
    NoServer = 3,

    /// <summary>Interrupted from the keyboard: 128 and the number of the signal, as a shell reports it.</summary>
    Interrupted = 130,
}
