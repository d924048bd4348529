using Flushback.Catalogue.Designs;
using Flushback.Geometry;
using Flushback.Geometry.Distances;
using Flushback.Mechanism.Knives;
using Flushback.Mechanism.Passes;
using Flushback.Mechanism.Tolerances;

namespace Flushback.Tolerances.Tests;

/// <summary>How a part is drawn whose faces and pins are off.</summary>
public class FaceDrawingTests
{
    private const double OffMm = 0.04;
    private static readonly Site _halfStopFace = Site.On(BladeFace.HalfStopFace);

    [Fact]
    public void A_face_that_is_off_outward_adds_metal_and_nothing_goes_far_from_where_it_was()
    {
        foreach (KnifeDesign design in KnifeCatalogue.All)
        {
            ToleranceStudy study = Studied.Begin(design, Studied.Everything);
            foreach (Site face in ToleranceList.Faces.Where(f => study.List.Tolerances.Any(t => t.Face == f)))
            {
                Knife drawn = study.Placement.Knife;
                Knife part = study.DrawPart(study.Off(study.IndexOf(face, Deviation.Offset), OffMm))!;
                Outline before = face.Part == Part.Blade ? drawn.Blade : drawn.Spring;
                Outline after = face.Part == Part.Blade ? part.Blade : part.Spring;
                Assert.True(after.AreaMm2 > before.AreaMm2);
                Assert.All(
                    after.Edges,
                    edge => Assert.InRange(Distance.Between(edge.Start, before).DistanceMm, 0, 0.2)
                );
            }
        }
    }

    [Fact]
    public void The_half_stop_face_goes_out_by_its_offset_and_the_open_flat_stays_on_its_line()
    {
        ToleranceStudy study = Studied.Begin(KnifeCatalogue.Wagtail, Studied.Everything);
        Knife drawn = study.Placement.Knife;
        Knife part = study.DrawPart(study.Off(study.IndexOf(_halfStopFace, Deviation.Offset), OffMm))!;
        foreach ((Edge before, Edge after, BladeFace face) in Both(drawn, part))
        {
            if (face == BladeFace.HalfStopFace)
            {
                Vector normal = before.OutwardNormalAt(0.5);
                Assert.Equal(OffMm, (after.PointAt(0.5) - before.PointAt(0.5)).Dot(normal), 1e-3);
            }
            else if (face is BladeFace.OpenFlat && !before.IsArc)
            {
                Assert.Equal(0, (after.Start - before.Start).Dot(before.OutwardNormalAt(0)), 1e-12);
                Assert.Equal(0, (after.End - before.Start).Dot(before.OutwardNormalAt(0)), 1e-12);
            }
        }
    }

    [Fact]
    public void Rounded_corners_keep_their_radius()
    {
        ToleranceStudy study = Studied.Begin(KnifeCatalogue.Sandpiper, Studied.Everything);
        Knife part = study.DrawPart(study.Off(study.IndexOf(_halfStopFace, Deviation.Offset), OffMm))!;
        foreach ((Edge before, Edge after, BladeFace face) in Both(study.Placement.Knife, part))
        {
            if (face is BladeFace.OpenCorner or BladeFace.ClosedCorner)
            {
                Assert.Equal(before.RadiusMm, after.RadiusMm, 1e-9);
            }
        }
    }

    [Fact]
    public void A_tilted_face_goes_out_in_front_and_in_behind()
    {
        ToleranceStudy study = Studied.Begin(KnifeCatalogue.Curlew, Studied.Everything);
        Knife part = study.DrawPart(study.Off(study.IndexOf(_halfStopFace, Deviation.Tilt), OffMm))!;
        (Edge before, Edge after, _) = Both(study.Placement.Knife, part)
            .Single(pair => pair.Face == BladeFace.HalfStopFace);

        Assert.Equal(OffMm, (after.Start - before.Start).Dot(before.OutwardNormalAt(0)), 1e-9);
        Assert.Equal(-OffMm, (after.End - before.End).Dot(before.OutwardNormalAt(0)), 1e-9);
    }

    [Fact]
    public void A_hole_drilled_off_in_the_blade_moves_the_blade_the_other_way_under_its_pin()
    {
        ToleranceStudy study = Studied.Begin(KnifeCatalogue.Wagtail, Studied.Everything);
        Knife part = study.DrawPart(study.Off(study.IndexOf(ToleranceKind.PivotHole, Deviation.Up), OffMm))!;
        Assert.All(
            Both(study.Placement.Knife, part),
            pair => Assert.Equal(-OffMm, (pair.After.Start - pair.Before.Start).Y, 1e-12)
        );
    }

    [Fact]
    public void Play_lowers_the_blade_and_raises_the_spring_by_half_of_it_each()
    {
        ToleranceStudy study = Studied.Begin(KnifeCatalogue.Wagtail, Studied.Everything);
        double perMm = study.Of(Outcome.OpenHeight).PerMm[study.IndexOf(ToleranceKind.PivotPlay, Deviation.Amount)];
        double other = study.Of(Outcome.OpenHeight).PerMm[study.IndexOf(ToleranceKind.CentrePinPlay, Deviation.Amount)];

        // Both let the spring down on the tang alike; against the handle the blade's play lowers the back by half itself.
        Assert.Equal(other - 0.5, perMm, 1e-9);
        Assert.True(perMm < 0);
    }

    private static IEnumerable<(Edge Before, Edge After, BladeFace Face)> Both(Knife drawn, Knife part) =>
        drawn.Blade.Edges.Zip(part.Blade.Edges, drawn.BladeFaces);
}
