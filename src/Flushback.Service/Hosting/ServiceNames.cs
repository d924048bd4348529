namespace Flushback.Service.Hosting;

/// <summary>The services of the contract, as it names them.</summary>
internal static class ServiceNames
{
    /// <summary>All of them.</summary>
    public static IEnumerable<string> All { get; } =
    [
        Wire.ProfileChecker.Descriptor.FullName,
        Wire.ProfileInspector.Descriptor.FullName,
        Wire.BenchSimulator.Descriptor.FullName,
        Wire.ProfileExporter.Descriptor.FullName,
        Wire.ToleranceStudy.Descriptor.FullName,
    ];
}
