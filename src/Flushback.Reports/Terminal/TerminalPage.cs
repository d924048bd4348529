using System.Globalization;
using System.Text;
using Flushback.Reports.Sheets;
using Spectre.Console;

namespace Flushback.Reports.Terminal;

/// <summary>Lays text out for a terminal of a fixed width; knows tables and wrapping, not knives.</summary>
internal sealed class TerminalPage : IDisposable
{
    private const int Indent = 2;

    private readonly StringWriter _text = new(CultureInfo.InvariantCulture);
    private readonly IAnsiConsole _console;
    private readonly int _columns;

    public TerminalPage(int columns)
    {
        _columns = columns;

        // Nothing is asked of the machine it runs on: no colours, no detection, always the same width.
        _console = AnsiConsole.Create(
            new AnsiConsoleSettings
            {
                Ansi = AnsiSupport.No,
                ColorSystem = ColorSystemSupport.NoColors,
                Interactive = InteractionSupport.No,
                Enrichment = new ProfileEnrichment { UseDefaultEnrichers = false },
                Out = new AnsiConsoleOutput(_text),
            }
        );
        _console.Profile.Width = columns;
        _console.Profile.Capabilities.Unicode = false;
    }

    public void Heading(string words)
    {
        Line(words);
        Line(new string('=', _columns));
    }

    public void Section(string words)
    {
        _text.WriteLine();
        Line(words);
        Line(new string('-', _columns));
    }

    public void Gap(bool wanted = true)
    {
        if (wanted)
        {
            _text.WriteLine();
        }
    }

    public void Line(string? words)
    {
        if (words is not null)
        {
            _console.Write(new Text(words));
            _text.WriteLine();
        }
    }

    public void Indented(string? words)
    {
        if (words is not null)
        {
            _console.Write(new Padder(new Text(words), new Padding(Indent, 0, 0, 0)));
        }
    }

    /// <summary>Rows under a head, with a rule between.</summary>
    public void Table(string[] heads, IEnumerable<string[]> rows)
    {
        string[][] cells = [.. rows];
        string[] rules =
        [
            .. heads.Select(
                (head, column) => new string('-', cells.Select(row => row[column].Length).Append(head.Length).Max())
            ),
        ];
        Columns([heads, rules, .. cells]);
    }

    /// <summary>Rows without a head, each column as wide as it needs, the whole indented.</summary>
    public void Columns(IEnumerable<string[]> rows)
    {
        string[][] cells = [.. rows];
        if (cells.Length == 0)
        {
            return;
        }

        var grid = new Grid();
        for (int column = 0; column < cells[0].Length; column++)
        {
            grid.AddColumn(new GridColumn { Padding = new Padding(column == 0 ? Indent : 0, 0, Indent, 0) });
        }

        foreach (string[] row in cells)
        {
            grid.AddRow([.. row.Select(cell => new Text(cell))]);
        }

        _console.Write(grid);
    }

    public void Facts(IEnumerable<Fact> facts) => Columns(facts.Select(fact => (string[])[fact.Label, Told(fact)]));

    public void Dispose() => _text.Dispose();

    /// <summary>The page so far, without blanks at the ends of lines.</summary>
    public override string ToString()
    {
        var page = new StringBuilder();
        foreach (string line in _text.ToString().Replace("\r\n", "\n", StringComparison.Ordinal).TrimEnd().Split('\n'))
        {
            page.Append(line.TrimEnd()).Append('\n');
        }

        return page.ToString();
    }

    private static string Told(Fact fact) =>
        (fact.Wanted, fact.FallsShort) switch
        {
            (null, _) => fact.Value,
            (_, true) => $"{fact.Value}; NOT ENOUGH, {fact.Wanted}",
            _ => $"{fact.Value}; {fact.Wanted}",
        };
}
