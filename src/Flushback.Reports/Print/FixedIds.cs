using System.Security.Cryptography;
using System.Text;
using System.Text.RegularExpressions;

namespace Flushback.Reports.Print;

/// <summary>Puts ids made from the content in place of the random ones that the library gives a file.</summary>
/// <remarks>
/// Random are the tags of embedded fonts, the two ids in the metadata and the two in the trailer. Each is replaced by as
/// many characters, so every offset in the file stays right. A fingerprint of the content is what the format advises for
/// the ids (ISO 32000-1, 14.4).
/// </remarks>
internal static partial class FixedIds
{
    public static byte[] In(byte[] file)
    {
        // Every byte is one character, there and back.
        string text = Encoding.Latin1.GetString(file);
        text = WithFontTags(text);
        string blank = TrailerId().Replace(MetadataId().Replace(text, Blank), Blank);
        string fingerprint = Convert.ToHexString(SHA256.HashData(Encoding.Latin1.GetBytes(blank)))[..32];
        string uuid = new Guid(Convert.FromHexString(fingerprint)).ToString();
        text = MetadataId().Replace(text, match => match.Groups["before"].Value + uuid);
        text = TrailerId().Replace(text, $"/ID[<{fingerprint}><{fingerprint}>]");
        return Encoding.Latin1.GetBytes(text);
    }

    private static string WithFontTags(string text)
    {
        List<string> tags = [];
        return FontTag()
            .Replace(
                text,
                match =>
                {
                    string tag = match.Groups["tag"].Value;
                    if (!tags.Contains(tag))
                    {
                        tags.Add(tag);
                    }

                    return $"/FLUSH{(char)('A' + tags.IndexOf(tag))}+";
                }
            );
    }

    private static string Blank(Match match) => new(' ', match.Length);

    [GeneratedRegex(@"/(?<tag>[A-Z]{6})\+(?=DejaVu)")]
    private static partial Regex FontTag();

    [GeneratedRegex("(?<before><xmpMM:(Document|Instance)ID>uuid:)[0-9a-f-]{36}")]
    private static partial Regex MetadataId();

    [GeneratedRegex("/ID\\[<[0-9A-F]{32}><[0-9A-F]{32}>\\]")]
    private static partial Regex TrailerId();
}
