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

    /// <summary>A check of seconds: the finest curve of a blade in thousands of edges.</summary>
    public static Wire.CheckRequest OfSeconds()
    {
        const int Pieces = 400;
        Wire.CheckRequest request = Requests.Outlines();
        request.Bench = new Wire.BenchSettings { StepDeg = 0.1 };
        Wire.Vertex[] drawn = [.. request.Knife.Outlines.Blade.Vertices];
        request.Knife.Outlines.Blade.Vertices.Clear();
        for (int i = 0; i < drawn.Length; i++)
        {
            (Wire.Vertex from, Wire.Vertex to) = (drawn[i], drawn[(i + 1) % drawn.Length]);
            int pieces = from.Bulge == 0 ? Pieces : 1;
            for (int k = 0; k < pieces; k++)
            {
                double part = k / (double)pieces;
                request.Knife.Outlines.Blade.Vertices.Add(
                    new Wire.Vertex
                    {
                        XMm = from.XMm + (part * (to.XMm - from.XMm)),
                        YMm = from.YMm + (part * (to.YMm - from.YMm)),
                        Bulge = from.Bulge,
                    }
                );
            }
        }

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
