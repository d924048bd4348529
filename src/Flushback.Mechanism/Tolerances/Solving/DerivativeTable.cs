using System.Collections.Immutable;
using Flushback.Mechanism.Tolerances.Drawing;

namespace Flushback.Mechanism.Tolerances.Solving;

/// <summary>The derivatives of a knife: in closed form where two contacts hold its stops, else by central differences.</summary>
internal sealed class DerivativeTable
{
    // Small against any face, large against what halving leaves of a rest angle.
    private const double StepMm = 1e-4;

    private readonly PartDrawing _drawing;
    private readonly Func<DrawnPart, PartReading?> _read;

    private DerivativeTable(PartDrawing drawing, Func<DrawnPart, PartReading?> read) =>
        (_drawing, _read) = (drawing, read);

    /// <summary>Derivatives of all that the bench tells of a knife.</summary>
    /// <param name="drawing">Its drawing.</param>
    /// <param name="gradient">What holds its stops.</param>
    /// <param name="asDrawn">What it reads.</param>
    /// <param name="read">Reads a part; null when it is not assembled.</param>
    public static ImmutableArray<Derivatives> Of(
        PartDrawing drawing,
        ReadingGradient gradient,
        PartReading asDrawn,
        Func<DrawnPart, PartReading?> read
    )
    {
        DerivativeTable table = new(drawing, read);
        ImmutableArray<Derivatives>.Builder derivatives = ImmutableArray.CreateBuilder<Derivatives>();
        foreach (Outcome outcome in Outcomes.OfBench)
        {
            if (asDrawn.Of(outcome) is { } value)
            {
                double?[] exact = [.. drawing.Motions.Select(motion => gradient.Of(outcome, motion))];
                bool isExact = exact.All(change => change is not null);
                derivatives.Add(
                    new Derivatives(
                        outcome,
                        value,
                        isExact ? [.. exact.Select(change => change!.Value)] : table.Differences(outcome, value),
                        isExact
                    )
                );
            }
        }

        return derivatives.ToImmutable();
    }

    private ImmutableArray<double> Differences(Outcome outcome, double asDrawn)
    {
        double[] differences = new double[_drawing.Motions.Length];
        double[] deviations = new double[differences.Length];
        for (int i = 0; i < differences.Length; i++)
        {
            double less = At(-StepMm);
            double more = At(StepMm);

            // Where one side has no rest the other still has a slope; where neither has, none is told.
            double apart = double.IsNaN(less) || double.IsNaN(more) ? StepMm : 2 * StepMm;
            less = double.IsNaN(less) ? asDrawn : less;
            more = double.IsNaN(more) ? asDrawn : more;
            differences[i] = (more - less) / apart;

            double At(double byMm)
            {
                deviations[i] = byMm;
                double? value = _drawing.Draw(deviations) is { } part ? _read(part)?.Of(outcome) : null;
                deviations[i] = 0;
                return value ?? double.NaN;
            }
        }

        return [.. differences];
    }
}
