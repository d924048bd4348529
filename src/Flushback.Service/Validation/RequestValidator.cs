using Flushback.Service.Errors;
using Flushback.Service.Limits;
using Google.Protobuf;
using Google.Protobuf.Collections;

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
        Violations violations = Begin(request, request.Name, request.Artifacts, _madeByACheck, "a check");
        ArtifactRules.CheckHandleCurve(request.Artifacts, request.Handle, violations);
        KnifeRules.Check(request.Knife, limits, violations);
        End(request.Bench, request.Handle, violations);
    }

    /// <inheritdoc cref="Validate(Wire.CheckRequest)"/>
    public void Validate(Wire.GenerateRequest request)
    {
        AmountRules.Check(request, limits);
        Violations violations = Begin(request, request.Name, request.Artifacts, _madeWithAPattern, "a pattern");
        ArtifactRules.CheckHandleCurve(request.Artifacts, request.Handle, violations);
        PatternRules.Check(request, violations);
        PatternRules.CheckFit(request, violations);
        PairRules.Check(request, violations);
        End(request.Bench, request.Handle, violations);
    }

    /// <inheritdoc cref="Validate(Wire.CheckRequest)"/>
    public void Validate(Wire.InspectRequest request)
    {
        AmountRules.Check(request, limits);
        Violations violations = Begin(request, request.Name, request.Artifacts, _madeByAnInspection, "an inspection");
        DrawingRules.CheckFile(request.Dxf, new FieldPath(null, "dxf"), violations);
        InspectRules.Check(request, limits, violations);
        violations.ThrowIfAny();
    }

    /// <inheritdoc cref="Validate(Wire.CheckRequest)"/>
    public void Validate(Wire.SimulateRequest request)
    {
        AmountRules.Check(request, limits);
        Violations violations = Begin(request, request.Name, request.Artifacts, _madeBySimulation, "a simulation");
        KnifeRules.Check(request.Knife, limits, violations);
        PassRules.Check(request, violations);
        End(request.Bench, null, violations);
    }

    /// <inheritdoc cref="Validate(Wire.CheckRequest)"/>
    public void Validate(Wire.PlanRequest request)
    {
        AmountRules.Check(request, limits);
        Violations violations = Begin(request, request.Name, request.Artifacts, _madeByPlanning, "a plan");
        KnifeRules.Check(request.Knife, limits, violations);
        PassRules.Check(request.Remains, violations);
        PlanRules.Check(request, violations);
        End(request.Bench, null, violations);
    }

    /// <inheritdoc cref="Validate(Wire.CheckRequest)"/>
    public void Validate(Wire.StudyRequest request)
    {
        AmountRules.Check(request, limits);
        Violations violations = Begin(request, request.Name, request.Artifacts, _madeByAStudy, "a tolerance study");
        KnifeRules.Check(request.Knife, limits, violations);
        StudyRules.Check(request, violations);
        End(request.Bench, request.Handle, violations);
    }

    /// <summary>What every request has: numbers, a name and the files it asks for.</summary>
    private Violations Begin(
        IMessage request,
        string name,
        RepeatedField<Wire.ArtifactKind> artifacts,
        IReadOnlyCollection<Wire.ArtifactKind> made,
        string call
    )
    {
        Violations violations = new();
        new FieldRules(limits.CoordinateMm, violations).Check(request);
        NameRules.CheckName(name, limits, violations);
        ArtifactRules.Check(artifacts, made, call, violations);
        return violations;
    }

    /// <summary>What a knife is read with, where it is said, and the end.</summary>
    private static void End(Wire.BenchSettings? bench, Wire.HandleSettings? handle, Violations violations)
    {
        if (bench is not null)
        {
            BenchRules.Check(bench, violations);
        }

        if (handle is not null)
        {
            HandleRules.Check(handle, violations);
        }

        violations.ThrowIfAny();
    }
}
