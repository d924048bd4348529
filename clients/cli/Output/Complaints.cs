namespace Flushback.Cli.Output;

/// <summary>What is wrong, on standard error, a sentence a line.</summary>
internal static class Complaints
{
    /// <summary>Prints sentences.</summary>
    public static void Tell(IEnumerable<string> sentences)
    {
        string who = Colour.OnError ? Colour.Alarm("flushback:") : "flushback:";
        foreach (string sentence in sentences)
        {
            Console.Error.WriteLine($"{who} {Printable.Line(sentence)}");
        }
    }
}
