using Flushback.Service.Errors;
using Flushback.Service.Limits;

namespace Flushback.Service.Validation;

/// <summary>Says all that is wrong with a request before anything is computed from it.</summary>
public sealed class RequestValidator(ServiceLimits limits)
{
    private static readonly Wire.ArtifactKind[] _madeByACheck =
    [
        Wire.ArtifactKind.Text,
        Wire.ArtifactKind.Html,
        Wire.ArtifactKind.Csv,
        Wire.ArtifactKind.HandleCsv,
        Wire.ArtifactKind.Json,
        Wire.ArtifactKind.Dxf,
    ];

    private static readonly Wire.ArtifactKind[] _madeByAnInspection =
    [
        Wire.ArtifactKind.Text,
        Wire.ArtifactKind.Html,
        Wire.ArtifactKind.Json,
        Wire.ArtifactKind.RepairedDxf,
        Wire.ArtifactKind.CutPathDxf,
    ];

    private static readonly Wire.ArtifactKind[] _madeBySimulation =
    [
        Wire.ArtifactKind.Text,
        Wire.ArtifactKind.Html,
        Wire.ArtifactKind.Json,
        Wire.ArtifactKind.Dxf,
    ];

    private static readonly Wire.ArtifactKind[] _madeByPlanning =
    [
        Wire.ArtifactKind.Text,
        Wire.ArtifactKind.Html,
        Wire.ArtifactKind.Json,
        Wire.ArtifactKind.CorrectedDxf,
        Wire.ArtifactKind.CardHtml,
        Wire.ArtifactKind.CardPdf,
    ];

    private static readonly Wire.ArtifactKind[] _madeWithAPattern =
    [
        .. _madeByACheck,
        Wire.ArtifactKind.PatternDxf,
        Wire.ArtifactKind.CutSheetDxf,
        Wire.ArtifactKind.PatternSvg,
        Wire.ArtifactKind.TemplatePdf,
    ];

    private static readonly Wire.ArtifactKind[] _madeByAStudy =
    [
        Wire.ArtifactKind.Text,
        Wire.ArtifactKind.Html,
        Wire.ArtifactKind.Json,
        Wire.ArtifactKind.SpreadCsv,
    ];

    /// <summary>Refuses a request that breaks the contract, with every violation.</summary>
    /// <exception cref="Grpc.Core.RpcException">
    /// INVALID_ARGUMENT with every violation; RESOURCE_EXHAUSTED when the request asks for more than is allowed.
    /// </exception>
    public void Validate(Wire.CheckRequest request)
    {
        AmountRules.Check(request, limits);
        Violations violations = new();
        new FieldRules(limits.CoordinateMm, violations).Check(request);
        NameRules.CheckName(request.Name, limits, violations);
        ArtifactRules.Check(request.Artifacts, _madeByACheck, "a check", violations);
        ArtifactRules.CheckHandleCurve(request.Artifacts, request.Handle, violations);
        KnifeRules.Check(request.Knife, limits, violations);
        if (request.Bench is { } bench)
        {
            BenchRules.Check(bench, violations);
        }

        if (request.Handle is { } handle)
        {
            HandleRules.Check(handle, violations);
        }

        violations.ThrowIfAny();
    }

    /// <inheritdoc cref="Validate(Wire.CheckRequest)"/>
    public void Validate(Wire.GenerateRequest request)
    {
        AmountRules.Check(request, limits);
        Violations violations = new();
        new FieldRules(limits.CoordinateMm, violations).Check(request);
        NameRules.CheckName(request.Name, limits, violations);
        ArtifactRules.Check(request.Artifacts, _madeWithAPattern, "a pattern", violations);
        ArtifactRules.CheckHandleCurve(request.Artifacts, request.Handle, violations);
        PatternRules.Check(request, violations);
        PatternRules.CheckFit(request, violations);
        PairRules.Check(request, violations);
        if (request.Bench is { } bench)
        {
            BenchRules.Check(bench, violations);
        }

        if (request.Handle is { } handle)
        {
            HandleRules.Check(handle, violations);
        }

        violations.ThrowIfAny();
    }

    /// <inheritdoc cref="Validate(Wire.CheckRequest)"/>
    public void Validate(Wire.InspectRequest request)
    {
        AmountRules.Check(request, limits);
        Violations violations = new();
        new FieldRules(limits.CoordinateMm, violations).Check(request);
        NameRules.CheckName(request.Name, limits, violations);
        ArtifactRules.Check(request.Artifacts, _madeByAnInspection, "an inspection", violations);
        DrawingRules.CheckFile(request.Dxf, new FieldPath(null, "dxf"), violations);
        InspectRules.Check(request, limits, violations);
        violations.ThrowIfAny();
    }

    /// <inheritdoc cref="Validate(Wire.CheckRequest)"/>
    public void Validate(Wire.SimulateRequest request)
    {
        AmountRules.Check(request, limits);
        Violations violations = new();
        new FieldRules(limits.CoordinateMm, violations).Check(request);
        NameRules.CheckName(request.Name, limits, violations);
        ArtifactRules.Check(request.Artifacts, _madeBySimulation, "a simulation", violations);
        KnifeRules.Check(request.Knife, limits, violations);
        PassRules.Check(request, violations);
        if (request.Bench is { } bench)
        {
            BenchRules.Check(bench, violations);
        }

        violations.ThrowIfAny();
    }

    /// <inheritdoc cref="Validate(Wire.CheckRequest)"/>
    public void Validate(Wire.PlanRequest request)
    {
        AmountRules.Check(request, limits);
        Violations violations = new();
        new FieldRules(limits.CoordinateMm, violations).Check(request);
        NameRules.CheckName(request.Name, limits, violations);
        ArtifactRules.Check(request.Artifacts, _madeByPlanning, "a plan", violations);
        KnifeRules.Check(request.Knife, limits, violations);
        PassRules.Check(request.Remains, violations);
        PlanRules.Check(request, violations);
        if (request.Bench is { } bench)
        {
            BenchRules.Check(bench, violations);
        }

        violations.ThrowIfAny();
    }

    /// <inheritdoc cref="Validate(Wire.CheckRequest)"/>
    public void Validate(Wire.StudyRequest request)
    {
        AmountRules.Check(request, limits);
        Violations violations = new();
        new FieldRules(limits.CoordinateMm, violations).Check(request);
        NameRules.CheckName(request.Name, limits, violations);
        ArtifactRules.Check(request.Artifacts, _madeByAStudy, "a tolerance study", violations);
        KnifeRules.Check(request.Knife, limits, violations);
        StudyRules.Check(request, violations);
        if (request.Bench is { } bench)
        {
            BenchRules.Check(bench, violations);
        }

        if (request.Handle is { } handle)
        {
            HandleRules.Check(handle, violations);
        }

        violations.ThrowIfAny();
    }
}
