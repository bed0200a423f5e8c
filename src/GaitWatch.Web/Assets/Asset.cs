using System.Collections.Frozen;
using System.Reflection;
using System.Security.Cryptography;

namespace GaitWatch.Web;

/// <summary>A style, script or picture that the pages bring along, embedded in this assembly.</summary>
/// <param name="Content">Its bytes.</param>
/// <param name="MediaType">Its kind.</param>
/// <param name="Hash">A short hash of its content: its entity tag, and what makes its address change with it.</param>
internal sealed record Asset(byte[] Content, string MediaType, string Hash)
{
    private const string Prefix = "assets/";

    public static FrozenDictionary<string, Asset> All { get; } = Load();

    /// <summary>The address of an asset, changing with its content so that a browser may keep it for good.</summary>
    public static string Address(string name) => $"/assets/{name}?v={All[name].Hash}";

    /// <summary>A text of this assembly that is no asset: what it becomes depends on the request.</summary>
    public static string Text(string resource)
    {
        using var reader = new StreamReader(Assembly.GetExecutingAssembly().GetManifestResourceStream(resource)!);
        return reader.ReadToEnd();
    }

    private static FrozenDictionary<string, Asset> Load()
    {
        var assembly = Assembly.GetExecutingAssembly();
        return assembly.GetManifestResourceNames()
            .Where(name => name.StartsWith(Prefix, StringComparison.Ordinal))
            .ToFrozenDictionary(name => name[Prefix.Length..], name => Read(assembly, name), StringComparer.Ordinal);
    }

    private static Asset Read(Assembly assembly, string name)
    {
        using var stream = assembly.GetManifestResourceStream(name)!;
        var content = new byte[stream.Length];
        stream.ReadExactly(content);
        var type = Path.GetExtension(name) switch
        {
            ".css" => "text/css; charset=utf-8",
            ".js" => "text/javascript; charset=utf-8",
            ".svg" => "image/svg+xml",
            ".png" => "image/png",
            var other => throw new InvalidOperationException($"Asset '{name}': '{other}' has no media type here."),
        };
        return new Asset(content, type, Convert.ToHexStringLower(SHA256.HashData(content))[..12]);
    }
}
