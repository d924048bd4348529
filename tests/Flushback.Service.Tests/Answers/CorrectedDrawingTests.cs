using System.Text;
using System.Text.Json;
using Flushback.Dxf.Chaining;
using Flushback.Dxf.Drawings;
using Flushback.Dxf.Reading;
using Flushback.Dxf.Tests;
using Flushback.Geometry;
using Flushback.Service.Tests.Hosting;
using Flushback.Service.Tests.Inputs;

namespace Flushback.Service.Tests.Answers;

/// <summary>The corrected drawing of a plan: read back it gives the plan's readings, wherever and however the knife was drawn.</summary>
public sealed class CorrectedDrawingTests(RunningService service) : IClassFixture<RunningService>
{
    // A drawing carries its coordinates with all their digits.
    private const double ReadBackMm = 1e-6;

    private const double InchMm = 25.4;
    private const int Millimetres = 4;
    private const int Inches = 1;

    private static readonly RigidMotion _askew = new(Angle.FromDegrees(37), new Vector(-120, 210));
    private static readonly RigidMotion _turnedOver = new(Angle.FromDegrees(-25), new Vector(310, -44), Mirrored: true);

    /// <summary>Placement, blade angle as drawn, unit and what one millimetre is in it.</summary>
    public static TheoryData<RigidMotion, double, int, double> Drawn =>
        new()
        {
            { RigidMotion.Identity, 0, Millimetres, 1 },
            { _askew, 0, Inches, 1 / InchMm },
            { _turnedOver, 0, Millimetres, 1 },
            { _turnedOver, 180, Inches, 1 / InchMm },
            { _askew, 90, Millimetres, 1 },
            { _askew, 180, Millimetres, 1 },
        };

    [Theory]
    [MemberData(nameof(Drawn))]
    public async Task Read_back_on_our_layers_it_gives_the_readings_of_the_plan(
        RigidMotion placement,
        double bladeAngleDeg,
        int units,
        double scale
    )
    {
        Wire.PlanRequest request = PlanRequests.HighDrawing(
            placement,
            bladeAngleDeg,
            units,
            scale,
            Wire.ArtifactKind.CorrectedDxf
        );
        Wire.PlanResponse plan = await service.Simulator.PlanAsync(request);

        Assert.True(plan.Report.ReachesTargets);
        await AssertReadsAsPlannedAsync(plan, request.Knife);
    }

    /// <remarks>With readings measured the plan starts from other outlines, and the corrected ones are those.</remarks>
    [Fact]
    public async Task Read_back_it_gives_the_readings_of_a_plan_from_what_was_measured()
    {
        Wire.PlanRequest request = PlanRequests.HighDrawing(
            _turnedOver,
            0,
            Millimetres,
            1,
            Wire.ArtifactKind.CorrectedDxf
        );
        request.Measured = new Wire.MeasuredReadings { HalfStopMm = 0.35, ClosedMm = 0.55 };
        Wire.PlanResponse plan = await service.Simulator.PlanAsync(request);

        await AssertReadsAsPlannedAsync(plan, request.Knife);
    }

    [Fact]
    public async Task A_knife_sent_as_outlines_gets_a_new_drawing_that_reads_as_planned()
    {
        Wire.PlanRequest request = PlanRequests.High(Wire.ArtifactKind.CorrectedDxf);
        Wire.PlanResponse plan = await service.Simulator.PlanAsync(request);

        await AssertReadsAsPlannedAsync(plan, request.Knife);
    }

    [Fact]
    public async Task The_users_own_lines_stay_as_they_are()
    {
        Wire.PlanRequest request = PlanRequests.HighDrawing(
            _askew,
            0,
            Inches,
            1 / InchMm,
            Wire.ArtifactKind.CorrectedDxf
        );
        Wire.PlanResponse plan = await service.Simulator.PlanAsync(request);

        string[] before = request.Knife.Drawing.Dxf.ToString(Encoding.Latin1).Split('\n');
        string[] after = plan.Artifacts[0].Content.ToString(Encoding.Latin1).Split('\n');
        Assert.Equal(before, Kept(before, after));
    }

    [Fact]
    public async Task The_metal_to_take_off_lies_on_a_layer_of_its_own_as_closed_outlines_with_arcs()
    {
        Wire.PlanResponse plan = await service.Simulator.PlanAsync(
            PlanRequests.HighDrawing(_turnedOver, 180, Inches, 1 / InchMm, Wire.ArtifactKind.CorrectedDxf)
        );
        DxfDrawing drawing = Read(plan);
        Outline[] regions = [.. OutlinesOn(drawing, plan.Report.Layers.Metal)];

        Assert.Equal(plan.Report.RemovedMm2, regions.Sum(region => region.AreaMm2), 1e-6);
        Assert.Equal(plan.Report.Steps.Sum(step => step.Removed.Regions.Count), regions.Length);
        Assert.Contains(regions.SelectMany(region => region.Edges), edge => edge.IsArc);
        Outline corrected = OutlinesOn(drawing, plan.Report.Layers.Blade).Single();
        Assert.Contains(corrected.Edges, edge => edge.IsArc);
        Assert.All(
            regions.SelectMany(region => region.Edges),
            edge => Assert.InRange(corrected.SignedDistanceMm(edge.PointAt(0.5)), double.MinValue, 1e-6)
        );
    }

    [Fact]
    public async Task A_plan_of_a_corrected_drawing_draws_on_layers_that_are_still_free()
    {
        Wire.PlanRequest request = PlanRequests.HighDrawing(_askew, 0, Millimetres, 1, Wire.ArtifactKind.CorrectedDxf);
        Wire.PlanResponse first = await service.Simulator.PlanAsync(request);
        request.Knife = ReadBack(first, request.Knife);
        request.Bench = new Wire.BenchSettings { TargetSet = Wire.TargetSet.Finished };
        Wire.PlanResponse second = await service.Simulator.PlanAsync(request);

        Assert.Equal("FLUSHBACK_BLADE", first.Report.Layers.Blade);
        Assert.Equal("FLUSHBACK_BLADE_2", second.Report.Layers.Blade);
        await AssertReadsAsPlannedAsync(second, request.Knife);
    }

    [Theory]
    [MemberData(nameof(Drawn))]
    public async Task Another_reader_finds_nothing_to_mend_and_the_amounts_in_both_units(
        RigidMotion placement,
        double bladeAngleDeg,
        int units,
        double scale
    )
    {
        Wire.PlanResponse plan = await service.Simulator.PlanAsync(
            PlanRequests.HighDrawing(placement, bladeAngleDeg, units, scale, Wire.ArtifactKind.CorrectedDxf)
        );
        JsonElement seen = Referee.Dump(plan.Artifacts[0].Content.ToByteArray());

        Assert.Empty(seen.GetProperty("errors").EnumerateArray());
        Assert.Empty(seen.GetProperty("fixes").EnumerateArray());
        string all = seen.GetProperty("entities").GetRawText();
        Wire.FlatSlice slice = plan.Report.Steps.First(step => step.Pass.FlatSlice is not null).Pass.FlatSlice;
        double mm = Math.Max(slice.FrontDepthMm, slice.RearDepthMm);
        Assert.Contains(
            FormattableString.Invariant($"{mm:0.000} mm ({mm / 0.0254:0.0} thou)"),
            all,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task A_cad_program_prints_it()
    {
        Wire.PlanRequest request = PlanRequests.HighDrawing(
            RigidMotion.Identity,
            0,
            Millimetres,
            1,
            Wire.ArtifactKind.CorrectedDxf
        );
        Wire.PlanResponse plan = await service.Simulator.PlanAsync(request);

        int before = Referee.PrintedBytes(request.Knife.Drawing.Dxf.ToByteArray());
        int after = Referee.PrintedBytes(plan.Artifacts[0].Content.ToByteArray());
        Assert.True(after > before + 1000, $"The drawing prints {before} bytes, with the plan {after}.");
    }

    [Fact]
    public async Task A_solid_modeller_makes_the_corrected_outlines_of_it()
    {
        Wire.PlanRequest request = PlanRequests.HighDrawing(_askew, 0, Millimetres, 1, Wire.ArtifactKind.CorrectedDxf);
        Wire.PlanResponse plan = await service.Simulator.PlanAsync(request);

        int edges = plan.Report.Blade.Vertices.Count + plan.Report.Spring.Vertices.Count;
        int before = Referee.Modelled(request.Knife.Drawing.Dxf.ToByteArray()).GetArrayLength();
        int after = Referee.Modelled(plan.Artifacts[0].Content.ToByteArray()).GetArrayLength();
        Assert.InRange(after - before, edges, int.MaxValue);
    }

    private async Task AssertReadsAsPlannedAsync(Wire.PlanResponse plan, Wire.Knife knife)
    {
        Wire.CheckReport read = (
            await service.Checker.CheckAsync(new Wire.CheckRequest { Knife = ReadBack(plan, knife) })
        ).Report;
        Wire.SimulationStep end = plan.Report.Steps[^1];
        Assert.Equal(end.Stops.Count, read.Stops.Count);
        foreach ((Wire.StopReading planned, Wire.StopReading found) in end.Stops.Zip(read.Stops))
        {
            Assert.Equal(planned.LiftMm, found.LiftMm, ReadBackMm);
            Assert.Equal(planned.RestAngleDeg, found.RestAngleDeg, 1e-4);
            Assert.Equal(
                planned.Contacts.Select(contact => (contact.BladeFace, contact.SpringFace)),
                found.Contacts.Select(contact => (contact.BladeFace, contact.SpringFace))
            );
        }
    }

    /// <summary>The corrected drawing, with our layers named for blade and spring and all else as asked before.</summary>
    private static Wire.Knife ReadBack(Wire.PlanResponse plan, Wire.Knife knife)
    {
        Wire.Knife corrected = knife.Clone();
        corrected.Drawing = new Wire.KnifeDrawing
        {
            Dxf = plan.Artifacts[0].Content,
            Layers = new Wire.LayerRoles { Blade = plan.Report.Layers.Blade, Spring = plan.Report.Layers.Spring },
        };
        return corrected;
    }

    private static DxfDrawing Read(Wire.PlanResponse plan) =>
        DxfReader.Read(plan.Artifacts[0].Content.ToByteArray(), DxfReadOptions.Default).Drawing!;

    private static IEnumerable<Outline> OutlinesOn(DxfDrawing drawing, string layer) =>
        DxfContours
            .ContoursOf(drawing, layer, DxfReadOptions.Default.JoinToleranceMm)
            .Contours.Select(contour => contour.Outline);

    /// <summary>Of the lines after, those that stand before in the same order.</summary>
    private static List<string> Kept(string[] before, string[] after)
    {
        List<string> kept = [];
        foreach (string line in after)
        {
            if (kept.Count < before.Length && line == before[kept.Count])
            {
                kept.Add(line);
            }
        }

        return kept;
    }
}
