using Flushback.Mechanism.Passes;
using Flushback.Reports.Page;
using Flushback.Reports.Sheets;

namespace Flushback.Reports.Pictures;

/// <summary>The steps of a simulation with their pictures.</summary>
internal static class StepPictures
{
    /// <summary>Each step in words beside its pictures as SVG text.</summary>
    public static IReadOnlyList<StepOnPage> Of(Simulation simulation, IReadOnlyList<StepSheet> rows) =>
        [
            .. rows.Zip(
                simulation.Steps.Prepend(simulation.Start),
                (row, step) =>
                    new StepOnPage(
                        row,
                        Svg.Write(PassPicture.Whole(simulation, step, row.Number)),
                        PassPicture.Close(step, row.Number) is { } close ? Svg.Write(close) : null
                    )
            ),
        ];
}
