using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Handle;
using Flushback.Reports;
using Flushback.Service.Drawings;
using Google.Protobuf;

namespace Flushback.Service.Artifacts;

/// <summary>Makes the files a caller asks for beside the report.</summary>
internal static class ArtifactMaker
{
    private static readonly JsonFormatter _json = new(
        JsonFormatter.Settings.Default.WithIndentation().WithFormatDefaultValues(true)
    );

    /// <summary>A file.</summary>
    /// <param name="kind">Which; validated.</param>
    /// <param name="report">The report in the contract's form.</param>
    /// <param name="bench">The same report in the core's form.</param>
    /// <param name="handle">The knife in its handle, when asked for.</param>
    /// <param name="source">How the knife came in.</param>
    public static Wire.Artifact Make(
        Wire.ArtifactKind kind,
        Wire.CheckReport report,
        BenchReport bench,
        HandleReport? handle,
        KnifeSource source
    ) =>
        kind switch
        {
            Wire.ArtifactKind.Text => Text(
                kind,
                "report.txt",
                "text/plain",
                TextReport.Write(report.Name, bench, source.Repairs, handle)
            ),
            Wire.ArtifactKind.Html => Text(
                kind,
                "report.html",
                "text/html",
                HtmlReport.Write(report.Name, bench, source.Repairs, handle)
            ),
            Wire.ArtifactKind.Csv => Text(kind, "lift-curve.csv", "text/csv", LiftCurveCsv.Write(bench)),
            Wire.ArtifactKind.Json => Text(kind, "report.json", "application/json", JsonOf(report)),
            Wire.ArtifactKind.Dxf => Bytes(kind, "contacts.dxf", "image/vnd.dxf", ContactDrawing.Of(bench, source)),
            _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Not validated."),
        };

    // By way of the wire, where a zero has no sign: the file then holds exactly the report that the caller gets.
    private static string JsonOf(Wire.CheckReport report) =>
        _json.Format(Wire.CheckReport.Parser.ParseFrom(report.ToByteArray())) + "\n";

    private static Wire.Artifact Text(Wire.ArtifactKind kind, string fileName, string mediaType, string text) =>
        New(kind, fileName, mediaType, ByteString.CopyFromUtf8(text));

    private static Wire.Artifact Bytes(Wire.ArtifactKind kind, string fileName, string mediaType, byte[] bytes) =>
        New(kind, fileName, mediaType, UnsafeByteOperations.UnsafeWrap(bytes));

    private static Wire.Artifact New(Wire.ArtifactKind kind, string fileName, string mediaType, ByteString content) =>
        new()
        {
            Kind = kind,
            FileName = fileName,
            MediaType = mediaType,
            Content = content,
        };
}
