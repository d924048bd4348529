using System.Globalization;
using System.Text;
using Flushback.Contract.V1;
using Google.Protobuf;
using Google.Protobuf.Reflection;

namespace Flushback.Cli.Patterns;

/// <summary>A page of dimensions as a fit changed it: what the page said, and the numbers that were chosen, each with what it was.</summary>
internal static class FittedPage
{
    /// <summary>The file's name in the folder of a run.</summary>
    public const string FileName = "pattern.yaml";

    /// <summary>Writes the page.</summary>
    /// <param name="name">What the knife is called.</param>
    /// <param name="fitting">What came of the fit.</param>
    public static string Write(string name, Fitting fitting)
    {
        StringBuilder page = new();
        page.Append("# Fitted: ").Append(fitting.Sentence).Append('\n');
        page.Append("name: '").Append(name.Replace("'", "''", StringComparison.Ordinal)).Append("'\n");
        foreach (FieldDescriptor groupField in Pattern.Descriptor.Fields.InDeclarationOrder())
        {
            if (groupField.Accessor.GetValue(fitting.Pattern) is IMessage group)
            {
                page.Append(PatternKeys.Of(groupField.Name)).Append(":\n");
                foreach (FieldDescriptor field in group.Descriptor.Fields.InDeclarationOrder().Where(IsSaid))
                {
                    page.Append("  ").Append(PatternKeys.Of(field.Name)).Append(": ");
                    page.Append(PatternValue.Write(field, field.Accessor.GetValue(group)));
                    page.Append(WasOf(fitting, $"{groupField.Name}.{field.Name}")).Append('\n');
                }

                bool IsSaid(FieldDescriptor field) =>
                    field.HasPresence
                        ? field.Accessor.HasValue(group)
                        : Convert.ToInt32(field.Accessor.GetValue(group), CultureInfo.InvariantCulture) != 0;
            }
        }

        return page.ToString();
    }

    private static string WasOf(Fitting fitting, string field) =>
        fitting.Changes.FirstOrDefault(change => change.Chosen && change.Field == field) is { } change
            ? string.Create(CultureInfo.InvariantCulture, $" # was {change.From:0.###} {change.Unit}")
            : "";
}
