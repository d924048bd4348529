using System.Globalization;
using System.Runtime.CompilerServices;
using System.Text.RegularExpressions;
using Flushback.Patterns.Pairs;
using Flushback.Patterns.Parameters;
using Flushback.Service.Limits;
using Flushback.Service.Mapping;
using Flushback.Service.Tests.BadInput;
using Flushback.Service.Tests.Hosting;
using Flushback.Service.Validation;
using Google.Protobuf.Reflection;
using Grpc.Core;

namespace Flushback.Service.Tests.Answers;

public sealed partial class PatternTests(RunningService service) : IClassFixture<RunningService>
{
    private static readonly Wire.ArtifactKind[] _all =
    [
        Wire.ArtifactKind.TemplatePdf,
        Wire.ArtifactKind.PatternDxf,
        Wire.ArtifactKind.CutSheetDxf,
        Wire.ArtifactKind.PatternSvg,
        Wire.ArtifactKind.Text,
        Wire.ArtifactKind.Html,
        Wire.ArtifactKind.Json,
        Wire.ArtifactKind.Csv,
        Wire.ArtifactKind.Dxf,
        Wire.ArtifactKind.HandleCsv,
    ];

    [Fact]
    public async Task A_page_with_nothing_on_it_is_drawn_and_reads_what_it_wants()
    {
        Wire.GenerateResponse response = await service.Exporter.GenerateAsync(new Wire.GenerateRequest());

        Assert.Equal(Wire.Verdict.Good, response.Report.Verdict);
        AssertReads(response.Report, 5 * 0.0254, 15 * 0.0254);
        Assert.Equal(
            [Wire.PieceKind.Blade, Wire.PieceKind.Spring, Wire.PieceKind.Handle],
            response.Pattern.Pieces.Select(piece => piece.Kind)
        );
        Assert.Equal([1, 2, 3], response.Pattern.Pieces.Select(piece => piece.Holes.Count));
        Assert.All(response.Pattern.Pieces, piece => Assert.Null(piece.Rough));
        Assert.Contains(response.Pattern.Pieces[0].Marks, mark => mark.Kind == Wire.MarkKind.NailNick);
        Assert.Contains(response.Pattern.Pieces[2].Marks, mark => mark.Kind == Wire.MarkKind.Well);
        Assert.True(response.Pattern.HandleLine.Count >= 2);
        Assert.Equal(0, response.Pattern.HandleLine[^1].Bulge);
    }

    [Fact]
    public async Task What_is_left_out_is_filled_in_and_what_is_given_is_kept()
    {
        Wire.Pattern asked = new()
        {
            Tang = new() { HeightMm = 4.75 },
            Blade = new() { Family = Wire.BladeFamily.Pen },
        };

        Wire.Pattern drawn = (await GenerateAsync(asked)).Pattern.Dimensions;

        Assert.Equal(4.75, drawn.Tang.HeightMm);
        Assert.Equal(Wire.BladeFamily.Pen, drawn.Blade.Family);
        Assert.True(drawn.Tang.HalfStop);
        Assert.True(drawn.Blade.HasLengthMm);
        Assert.True(drawn.Spring.HasCentreDepthMm);
    }

    [Fact]
    public async Task The_wanted_readings_are_the_targets_of_the_check()
    {
        Wire.Pattern asked = new()
        {
            Readings = new() { HalfStopMm = 0.05, ClosedMm = 0.2 },
        };

        Wire.CheckReport report = (await GenerateAsync(asked)).Report;

        AssertReads(report, 0.05, 0.2);
        Assert.Equal([0, 0.05, 0.2], report.Stops.Select(stop => stop.TargetMm));
        Assert.Equal(Wire.Verdict.Good, report.Verdict);
    }

    [Fact]
    public async Task A_set_of_targets_takes_the_place_of_the_wanted_readings()
    {
        Wire.GenerateRequest request = new() { Bench = new() { TargetSet = Wire.TargetSet.Finished } };

        Wire.CheckReport report = (await service.Exporter.GenerateAsync(request)).Report;

        Assert.Equal([0, 0, 0], report.Stops.Select(stop => stop.TargetMm));
        Assert.Equal(Wire.Verdict.NeedsWork, report.Verdict);
    }

    [Fact]
    public async Task In_the_handle_the_spring_of_the_pattern_is_reckoned_with()
    {
        Wire.Pattern wide = new() { Spring = new() { WidthMm = 4 } };
        Wire.Pattern narrow = new() { Spring = new() { WidthMm = 2 } };

        Wire.HandleReport of4 = (await GenerateAsync(wide, new Wire.HandleSettings())).Report.Handle;
        Wire.HandleReport of2 = (await GenerateAsync(narrow, new Wire.HandleSettings())).Report.Handle;

        // Forces are in proportion to the width (a beam's stiffness).
        Assert.Equal(2, of4.Pull.PullN / of2.Pull.PullN, 1e-9);
    }

    [Fact]
    public async Task Files_come_in_the_order_asked_with_name_and_media_type_and_the_same_bytes_again()
    {
        Wire.GenerateRequest request = new()
        {
            Name = "Dunnock",
            Handle = new(),
            Artifacts = { _all },
        };

        Wire.GenerateResponse response = await service.Exporter.GenerateAsync(request);
        Wire.GenerateResponse again = await service.Exporter.GenerateAsync(request);

        Assert.Equal(_all, response.Artifacts.Select(artifact => artifact.Kind));
        Assert.Equal(
            [
                ("template.pdf", "application/pdf"),
                ("pattern.dxf", "image/vnd.dxf"),
                ("cut-sheet.dxf", "image/vnd.dxf"),
                ("pattern.svg", "image/svg+xml"),
                ("report.txt", "text/plain"),
                ("report.html", "text/html"),
                ("report.json", "application/json"),
                ("lift-curve.csv", "text/csv"),
                ("contacts.dxf", "image/vnd.dxf"),
                ("handle-curve.csv", "text/csv"),
            ],
            response.Artifacts.Select(artifact => (artifact.FileName, artifact.MediaType))
        );
        Assert.Equal(response, again);
        Assert.StartsWith("%PDF-", response.Artifacts[0].Content.ToStringUtf8(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_json_reads_back_as_the_answer_without_its_files()
    {
        Wire.GenerateRequest request = new() { Artifacts = { Wire.ArtifactKind.Json } };
        Wire.GenerateResponse response = await service.Exporter.GenerateAsync(request);

        Wire.GenerateResponse read = Wire.GenerateResponse.Parser.ParseJson(
            response.Artifacts[0].Content.ToStringUtf8()
        );

        response.Artifacts.Clear();
        Assert.Equal(response, read);
    }

    [Fact]
    public async Task The_table_of_parameters_names_each_field_of_the_contract_once()
    {
        var response = await service.Exporter.ListPatternParametersAsync(new Wire.ListPatternParametersRequest());

        Assert.Equal(FieldsOfAPattern().Order(), response.Parameters.Select(parameter => parameter.Field).Order());
        Assert.All(
            response.Parameters,
            parameter =>
            {
                Assert.NotEmpty(parameter.Name);
                Assert.EndsWith(".", parameter.Meaning, StringComparison.Ordinal);
                bool isChoice = parameter.Choices.Count > 0;
                Assert.Equal(isChoice, parameter.Unit.Length == 0);
                Assert.Equal(!isChoice, parameter is { HasLeast: true, HasMost: true });
                Assert.Equal(!isChoice && parameter.Follows.Length == 0, parameter.HasDefaultValue);
            }
        );
    }

    [Fact]
    public async Task What_stands_beside_the_pattern_is_named_once_with_the_limits_of_the_first_blade_where_it_has_them()
    {
        var response = await service.Exporter.ListPatternParametersAsync(new Wire.ListPatternParametersRequest());
        Dictionary<string, Wire.PatternParameter> beside = response.BesidePattern.ToDictionary(known => known.Field);

        string[] ownFields =
        [
            .. Wire
                .SecondBlade.Descriptor.Fields.InDeclarationOrder()
                .Where(field => field.FieldType != FieldType.Message)
                .Select(field => $"second_blade.{field.Name}"),
        ];
        Wire.PatternParameter[] asFirst =
        [
            .. response.Parameters.Where(known => known.Field.Split('.')[0] is "tang" or "blade" or "readings"),
        ];
        string[] fields =
        [
            "arrangement",
            "fit.free",
            .. ownFields,
            .. asFirst.Select(first => $"second_blade.{first.Field}"),
        ];
        Assert.Equal(fields.Order(), beside.Keys.Order());
        Assert.Equal(["one blade", "shared spring", "two springs"], beside["arrangement"].Choices);
        Assert.Equal(["yes", "no"], beside["second_blade.at_other_end"].Choices);
        Assert.All(
            asFirst,
            first =>
            {
                Wire.PatternParameter second = beside[$"second_blade.{first.Field}"].Clone();
                Assert.Equal($"second blade's {first.Name}", second.Name);
                (second.Field, second.Name) = (first.Field, first.Name);
                Assert.Equal(first, second);
            }
        );
        Assert.All(beside.Values, known => Assert.EndsWith(".", known.Meaning, StringComparison.Ordinal));
    }

    [Fact]
    public void The_contract_tells_meaning_limits_and_default_of_each_number_of_a_second_blade_as_the_table_does()
    {
        string contract = Unwrapped(
            File.ReadAllText(Path.Combine(Root(), "protos", "flushback", "v1", "pattern.proto"))
        );
        Assert.All(
            SecondBladeLimits.All,
            limit =>
            {
                string otherwise = limit.Default is { } value ? $"default {Number(value)}" : $"absent: {limit.Follows}";
                Assert.Contains(
                    $"// {limit.Meaning} In millimetres, from {Number(limit.Least)} to {Number(limit.Most)}; {otherwise}. optional double {limit.Field} =",
                    contract,
                    StringComparison.Ordinal
                );
            }
        );
    }

    [Fact]
    public void Each_number_of_a_second_blade_may_lie_at_its_limits_and_not_beyond()
    {
        Assert.All(
            SecondBladeLimits.All,
            limit =>
            {
                FieldDescriptor field = Wire.SecondBlade.Descriptor.FindFieldByName(limit.Field);
                foreach (
                    (double value, bool isAllowed) in ((double, bool)[])
                        [
                            (limit.Least, true),
                            (limit.Most, true),
                            (limit.Least - 1e-3, false),
                            (limit.Most + 1e-3, false),
                        ]
                )
                {
                    Wire.GenerateRequest request = new() { SecondBlade = new Wire.SecondBlade() };
                    field.Accessor.SetValue(request.SecondBlade, value);
                    Exception? refused = Record.Exception(() =>
                        new RequestValidator(new ServiceLimits()).Validate(request)
                    );

                    Assert.Equal(isAllowed, refused is null);
                    Assert.Equal(
                        isAllowed ? [] : [($"second_blade.{limit.Field}", "OUT_OF_RANGE")],
                        refused is RpcException told ? Refused.From(told).Violations : []
                    );
                }
            }
        );
    }

    [Fact]
    public void Every_number_of_the_core_comes_through_the_contract_and_back()
    {
        PatternParameters parameters = PatternParameters.Default with
        {
            Tang = PatternParameters.Default.Tang with { HasHalfStop = false },
            Blade = PatternParameters.Default.Blade with { Family = BladeFamily.Sheepsfoot },
        };
        foreach ((int i, PatternLimit limit) in PatternLimits.All.Index())
        {
            parameters = limit.Write(parameters, limit.Least + ((limit.Most - limit.Least) * (i + 1) / 100));
        }

        Assert.Equal(parameters, parameters.ToWire().ToParameters());
        Assert.Equal(PatternParameters.Default, PatternParameters.Default.ToWire().ToParameters());
        Assert.Equal(PatternParameters.Default, ((Wire.Pattern?)null).ToParameters());
    }

    [Fact]
    public void The_contract_tells_meaning_limits_and_default_of_each_number_as_the_table_does()
    {
        string contract = Unwrapped(
            File.ReadAllText(Path.Combine(Root(), "protos", "flushback", "v1", "pattern.proto"))
        );
        Assert.All(
            PatternLimits.All,
            limit =>
            {
                string unit = limit.Unit == "mm" ? "millimetres" : "degrees";
                string otherwise = limit.Default is { } value ? $"default {Number(value)}" : $"absent: {limit.Follows}";
                string field = limit.Path[(limit.Group.Length + 1)..];
                Assert.Contains(
                    $"// {limit.Meaning} In {unit}, from {Number(limit.Least)} to {Number(limit.Most)}; {otherwise}. optional double {field} =",
                    contract,
                    StringComparison.Ordinal
                );
            }
        );
    }

    private static string Number(double value) => value.ToString("0.######", CultureInfo.InvariantCulture);

    // Comments over several lines as one, and the field on the same line.
    private static string Unwrapped(string proto) =>
        Whitespace().Replace(Regex.Replace(proto, @"(?<=//[^\n]*)\n +// ", " "), " ");

    [GeneratedRegex(@"\s+")]
    private static partial Regex Whitespace();

    private static string Root([CallerFilePath] string thisFile = "") =>
        Path.GetFullPath(Path.Combine(Path.GetDirectoryName(thisFile)!, "..", "..", ".."));

    private static IEnumerable<string> FieldsOfAPattern() =>
        Wire
            .Pattern.Descriptor.Fields.InDeclarationOrder()
            .SelectMany(group =>
                group
                    .MessageType.Fields.InDeclarationOrder()
                    .Select((FieldDescriptor field) => $"{group.Name}.{field.Name}")
            );

    private async Task<Wire.GenerateResponse> GenerateAsync(Wire.Pattern pattern, Wire.HandleSettings? handle = null) =>
        await service.Exporter.GenerateAsync(new Wire.GenerateRequest { Pattern = pattern, Handle = handle });

    internal static void AssertReads(Wire.CheckReport report, double halfStopMm, double closedMm)
    {
        Assert.Equal([Wire.Stop.Open, Wire.Stop.HalfStop, Wire.Stop.Closed], report.Stops.Select(stop => stop.Stop));
        Assert.Equal(0, report.Stops[0].LiftMm, 1e-9);
        Assert.Equal(halfStopMm, report.Stops[1].LiftMm, 1e-6);
        Assert.Equal(closedMm, report.Stops[2].LiftMm, 1e-6);
    }
}
