using Flushback.Catalogue.Designs;
using Flushback.Service.Tests.Inputs;

namespace Flushback.Deployment.Tests.Running;

/// <summary>Requests, and what is right to answer.</summary>
internal static class Checks
{
    /// <summary>A drawing of a good knife that fills a request nearly to the service's limit of 4 MiB.</summary>
    public static Wire.CheckRequest FourMegabytes()
    {
        // Comments of a DXF are left aside, however many there are.
        string filler = string.Concat(Enumerable.Repeat($"999\n{new string('x', 240)}\n", 16_800));
        byte[] dxf = System.Text.Encoding.ASCII.GetBytes(filler + LooseDrawing.Of(KnifeCatalogue.Wagtail.ToDrawn()));
        Wire.CheckRequest request = Requests.Drawing(dxf);
        Assert.InRange(request.CalculateSize(), 4_000_000, 4 * 1024 * 1024);
        return request;
    }

    /// <summary>A check of seconds: a fine curve of a blade in thousands of edges.</summary>
    public static Wire.CheckRequest OfSeconds()
    {
        Wire.CheckRequest request = Requests.Outlines(FinelyDrawn.Wagtail(4000));
        request.Bench = new Wire.BenchSettings { StepDeg = 0.1 };
        return request;
    }

    /// <summary>The knives of the catalogue, as a library of requests.</summary>
    public static IReadOnlyList<Wire.CheckRequest> Library() =>
        [
            Requests.Outlines(KnifeCatalogue.Wagtail.ToDrawn()),
            Requests.Outlines(KnifeCatalogue.Curlew.ToDrawn()),
            Requests.Drawing(LooseDrawing.Of(KnifeCatalogue.Wagtail.ToDrawn())),
        ];
}
