using Flushback.Geometry;
using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Handle;
using Flushback.Mechanism.Handle.Suggestions;

namespace Flushback.Service.Mapping;

/// <summary>A report of the handle to the contract: degrees, and points back on the user's drawing.</summary>
internal static class HandleMapping
{
    private const double NewtonsPerPound = 4.4482216152605;

    /// <summary>To the contract.</summary>
    public static Wire.HandleReport ToWire(this HandleReport report, RigidMotion toDrawing)
    {
        Wire.HandleReport wire = new()
        {
            Spring = ToWire(report.Spring, report.Settings),
            Pull = new Wire.NailPull
            {
                NailNickMm = report.Pull.NailNickMm,
                PullN = report.Pull.PullN,
                PullLbf = report.Pull.PullN / NewtonsPerPound,
                WithoutFrictionN = report.Pull.WithoutFrictionN,
                BladeAngleDeg = report.Pull.BladeAngle.Degrees,
            },
            Strength = ToWire(report.Strength),
        };
        wire.Stops.AddRange(report.Stops.Select(stop => ToWire(stop, toDrawing)));
        wire.Samples.AddRange(report.Curve.Select(ToWire));
        wire.StressAlong.AddRange(
            report.StressAlong.Select(point => new Wire.StressPoint
            {
                XMm = point.XMm,
                OpenMpa = point.OpenMpa,
                PeakMpa = point.PeakMpa,
            })
        );
        wire.Sensitivities.AddRange(report.Sensitivities.Select(ToWire));
        if (report.Suggestion is { } suggestion)
        {
            wire.Suggestion = ToWire(suggestion);
        }

        return wire;
    }

    private static Wire.SpringFigures ToWire(SpringFigures spring, HandleSettings settings) =>
        new()
        {
            PreloadMm = spring.PreloadMm,
            StiffNoseMm = spring.StiffNoseMm,
            OverhangMm = spring.OverhangMm,
            SpanMm = spring.SpanMm,
            StiffnessNPerMm = spring.StiffnessNPerMm,
            WidthMm = settings.WidthMm,
            Steel = settings.SpringSteel.Designation,
            ModulusMpa = spring.ModulusMpa,
            ModulusSource = settings.SpringSteel.ModulusSource,
            Friction = settings.Friction,
        };

    private static Wire.HandleStop ToWire(HandleStop stop, RigidMotion toDrawing)
    {
        Wire.HandleStop wire = new()
        {
            NominalAngleDeg = stop.Stop switch
            {
                Stop.Open => 0,
                Stop.HalfStop => 90,
                _ => 180,
            },
            Rests = stop.Rests,
            RestAngleDeg = stop.RestAngle.Degrees,
            LiftMm = stop.LiftMm,
            BenchLiftMm = stop.BenchLiftMm,
            PeakStressMpa = stop.PeakStressMpa,
            SnapNmm = stop.SnapNmm,
            TakesOverDeg = stop.TakesOver.Degrees,
        };
        wire.Contacts.AddRange(stop.Contacts.Select(contact => ToWire(contact, toDrawing)));
        return wire;
    }

    private static Wire.HandleContact ToWire(HandleContact contact, RigidMotion toDrawing)
    {
        Wire.HandleContact wire = new()
        {
            At = toDrawing.Apply(contact.At).ToWire(),
            AtKnife = contact.At.ToWire(),
            NormalDeg = contact.Normal.Direction.Degrees,
            ForceN = contact.ForceN,
            BladeFace = contact.BladeFace.ToWire(),
            SpringFace = contact.SpringFace.ToWire(),
        };
        if (contact.PressureMpa is { } pressure)
        {
            wire.PressureMpa = pressure;
        }

        if (contact.YieldPressureMpa is { } limit)
        {
            wire.YieldPressureMpa = limit;
        }

        return wire;
    }

    private static Wire.HandleSample ToWire(HandleSample sample) =>
        new()
        {
            BladeAngleDeg = sample.BladeAngle.Degrees,
            LiftMm = sample.LiftMm,
            BenchLiftMm = sample.BenchLiftMm,
            EnergyNmm = sample.EnergyNmm,
            TorqueNmm = sample.TorqueNmm,
            ClosingTorqueNmm = sample.ClosingTorqueNmm,
            OpeningTorqueNmm = sample.OpeningTorqueNmm,
            ForceN = sample.ForceN,
            PeakStressMpa = sample.PeakStressMpa,
        };

    private static Wire.Strength ToWire(StrengthVerdict strength)
    {
        Wire.Strength wire = new()
        {
            PeakStressMpa = strength.PeakStressMpa,
            AtXMm = strength.AtXMm,
            BladeAngleDeg = strength.BladeAngle.Degrees,
            Life = strength.Life switch
            {
                SpringLife.Endless => Wire.SpringLife.Endless,
                SpringLife.Limited => Wire.SpringLife.Limited,
                SpringLife.Short => Wire.SpringLife.Short,
                SpringLife.TakesSet => Wire.SpringLife.TakesSet,
                _ => Wire.SpringLife.Unspecified,
            },
        };
        if (strength is { TensileMpa: { } tensile, GerberMargin: { } gerber, YieldMargin: { } yield })
        {
            wire.TensileLowMpa = tensile.Low;
            wire.TensileHighMpa = tensile.High;
            wire.GerberMargin = gerber;
            wire.YieldMargin = yield;
        }

        return wire;
    }

    private static Wire.Sensitivity ToWire(Sensitivity sensitivity) =>
        new()
        {
            Dimension = sensitivity.Of.ToWire(),
            PullNPerMm = sensitivity.PullNPerMm,
            StressMpaPerMm = sensitivity.StressMpaPerMm,
            LiftPerMm = sensitivity.LiftPerMm,
        };

    private static Wire.Suggestion ToWire(Suggestion suggestion)
    {
        Wire.Suggestion wire = new()
        {
            Dimension = suggestion.Of.ToWire(),
            PullN = suggestion.PullN,
            PeakStressMpa = suggestion.PeakStressMpa,
            Sentence = suggestion.Sentence,
        };
        if (suggestion.ValueMm is { } value)
        {
            wire.ValueMm = value;
        }

        return wire;
    }
}
