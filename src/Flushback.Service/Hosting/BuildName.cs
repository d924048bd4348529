using System.Reflection;
using System.Security.Cryptography;
using System.Text;

namespace Flushback.Service.Hosting;

/// <summary>Which build of the service this is: the same text means the same code, and so the same answers.</summary>
internal static class BuildName
{
    private const string OurPrefix = "Flushback.";
    private const int KeptDigits = 12;

    /// <summary>Version, a hyphen, and the first digits of a hash over the code of every part.</summary>
    public static string Text { get; } = Tell(typeof(BuildName).Assembly);

    private static string Tell(Assembly service)
    {
        SortedDictionary<string, Guid> parts = new(StringComparer.Ordinal);
        Gather(service, parts);

        // The compiler is deterministic: the identity of a module is a hash of what it was compiled from.
        string all = string.Join('\n', parts.Select(part => $"{part.Key} {part.Value:N}"));
        string digits = Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(all)))[..KeptDigits];
        return $"{service.GetName().Version?.ToString(3)}-{digits}";
    }

    private static void Gather(Assembly part, SortedDictionary<string, Guid> parts)
    {
        if (parts.TryAdd(part.GetName().Name!, part.ManifestModule.ModuleVersionId))
        {
            foreach (AssemblyName used in part.GetReferencedAssemblies().Where(IsOurs))
            {
                Gather(Assembly.Load(used), parts);
            }
        }
    }

    private static bool IsOurs(AssemblyName name) => name.Name?.StartsWith(OurPrefix, StringComparison.Ordinal) == true;
}
