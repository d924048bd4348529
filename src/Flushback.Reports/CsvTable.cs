using System.Text;
using Flushback.Reports.Wording;

namespace Flushback.Reports;

/// <summary>A table as comma-separated values: RFC 4180, a header with units, lines ended by CR LF.</summary>
/// <remarks>Fields are numbers and the trade's words; none holds a comma, a quote or a line end, so none is quoted.</remarks>
internal sealed class CsvTable<T>(params (string Head, Func<T, string> Field)[] columns)
{
    public string Write(IEnumerable<T> rows, CancellationToken cancellation = default)
    {
        var text = new StringBuilder();
        Append(text, columns.Select(column => column.Head));
        foreach (T row in rows)
        {
            cancellation.ThrowIfCancellationRequested();
            Append(text, columns.Select(column => column.Field(row)));
        }

        return text.ToString();
    }

    private static void Append(StringBuilder text, IEnumerable<string> fields) =>
        text.AppendJoin(',', fields).Append("\r\n");
}

/// <summary>How a field is written.</summary>
internal static class CsvTable
{
    // A nanometre and a millionth of a degree: more than any dial shows, less than rounding leaves.
    private const int Decimals = 6;

    public static string Number(double value) => Measure.Plain.Number(value, Decimals);
}
