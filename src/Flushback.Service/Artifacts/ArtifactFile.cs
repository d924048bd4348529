using Google.Protobuf;

namespace Flushback.Service.Artifacts;

/// <summary>Files in the form of the contract.</summary>
internal static class ArtifactFile
{
    private static readonly JsonFormatter _json = new(
        JsonFormatter.Settings.Default.WithIndentation().WithFormatDefaultValues(true)
    );

    /// <summary>A text.</summary>
    public static Wire.Artifact Text(Wire.ArtifactKind kind, string fileName, string mediaType, string text) =>
        New(kind, fileName, mediaType, ByteString.CopyFromUtf8(text));

    /// <summary>A drawing; the bytes are handed over and not to be changed after.</summary>
    public static Wire.Artifact Dxf(Wire.ArtifactKind kind, string fileName, byte[] bytes) =>
        New(kind, fileName, "image/vnd.dxf", UnsafeByteOperations.UnsafeWrap(bytes));

    /// <summary>Sheets to print; the bytes are handed over and not to be changed after.</summary>
    public static Wire.Artifact Pdf(Wire.ArtifactKind kind, string fileName, byte[] bytes) =>
        New(kind, fileName, "application/pdf", UnsafeByteOperations.UnsafeWrap(bytes));

    /// <summary>A report in the JSON form of the contract.</summary>
    public static Wire.Artifact Json<TReport>(TReport report, string fileName = "report.json")
        where TReport : IMessage<TReport>
    {
        // By way of the wire, where a zero has no sign: the file then holds exactly the report that the caller gets.
        IMessage sent = report.Descriptor.Parser.ParseFrom(report.ToByteArray());
        return Text(Wire.ArtifactKind.Json, fileName, "application/json", _json.Format(sent) + "\n");
    }

    private static Wire.Artifact New(Wire.ArtifactKind kind, string fileName, string mediaType, ByteString content) =>
        new()
        {
            Kind = kind,
            FileName = fileName,
            MediaType = mediaType,
            Content = content,
        };
}
