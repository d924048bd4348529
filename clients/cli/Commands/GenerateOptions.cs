using System.CommandLine;
using Flushback.Cli.Arguments;
using Flushback.Contract.V1;

namespace Flushback.Cli.Commands;

/// <summary>The options that say in which form a pattern is written.</summary>
internal sealed class GenerateOptions
{
    private readonly Option<PaperSize> _paper = ParsedOption.One<PaperSize>(
        "--paper",
        "a4|letter",
        "Paper of the template; a4 without it.",
        DrawingForm.TryPaper,
        DrawingForm.PaperComplaint
    );

    private readonly Option<LengthUnit> _units = ParsedOption.One<LengthUnit>(
        "--units",
        "mm|in",
        "Unit of the drawings, and of lengths on the template; mm without it.",
        DrawingForm.TryUnit,
        DrawingForm.UnitComplaint
    );

    private readonly Option<DxfVersion> _version = ParsedOption.One<DxfVersion>(
        "--dxf",
        "r12|2000|2007|2010|2013|2018",
        "Version of the drawings; 2000 without it.",
        DrawingForm.TryVersion,
        DrawingForm.VersionComplaint
    );

    /// <summary>All of them, in the order of the help.</summary>
    public IEnumerable<Option> All => [_paper, _units, _version];

    /// <summary>Puts them into a request.</summary>
    public void Apply(ParseResult parsed, GenerateRequest request)
    {
        request.Paper = parsed.GetValue(_paper);
        request.Unit = parsed.GetValue(_units);
        request.DxfVersion = parsed.GetValue(_version);
    }
}
