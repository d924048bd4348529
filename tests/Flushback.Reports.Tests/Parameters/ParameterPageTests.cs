using System.Runtime.CompilerServices;
using System.Text;
using Flushback.Patterns.Parameters;
using Flushback.Reports.Tests.Fixtures;

namespace Flushback.Reports.Tests.Parameters;

/// <summary>
/// The page of all parameters under clients/samples/library is what the table and the drawing give today. After a wanted
/// change run these once with <c>FLUSHBACK_UPDATE_GOLDEN=1</c>, and look at the pictures.
/// </summary>
public class ParameterPageTests
{
    private static readonly IReadOnlyList<ParameterPicture> _pictures = new ParameterPictures(
        SamplePatterns.Default
    ).All;

    [Fact]
    public void Every_parameter_has_one_letter() =>
        Assert.Equal(
            PatternLimits.All.Select(limit => limit.Path).Order(StringComparer.Ordinal),
            _pictures
                .SelectMany(picture => picture.Callouts)
                .SelectMany(callout => callout.Paths)
                .Order(StringComparer.Ordinal)
        );

    [Fact]
    public void The_page_is_the_one_that_is_kept() => Matches("PARAMETERS.md", ParameterPage.Write(_pictures));

    [Fact]
    public void The_pictures_are_those_that_are_kept() =>
        Assert.All(_pictures, picture => Matches($"parameters/{picture.Id}.svg", picture.Write()));

    private static void Matches(string name, string text)
    {
        string path = Path.Combine(Library(), name);
        if (Environment.GetEnvironmentVariable("FLUSHBACK_UPDATE_GOLDEN") == "1")
        {
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            File.WriteAllText(path, text, new UTF8Encoding(encoderShouldEmitUTF8Identifier: false));
        }

        Assert.Equal(File.ReadAllText(path), text);
    }

    private static string Library([CallerFilePath] string thisFile = "") =>
        Path.GetFullPath(
            Path.Combine(Path.GetDirectoryName(thisFile)!, "..", "..", "..", "clients", "samples", "library")
        );
}
