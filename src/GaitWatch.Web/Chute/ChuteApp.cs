using System.Security.Cryptography;
using System.Text;

namespace GaitWatch.Web;

/// <summary>One way into the chute: the farm's own, or one by a share link. All its addresses lie below one path, which is what the installed app covers.</summary>
/// <param name="Path">The page's path, such as <c>/visits/next/chute</c>.</param>
/// <param name="Api">What the routes of findings begin with.</param>
/// <param name="List">The page with the visit's list.</param>
internal sealed record ChuteApp(string Path, string Api, string List)
{
    /// <summary>What the page brings along, in the order in which it needs it.</summary>
    private static readonly string[] s_scripts = ["chute-words.js", "chute-rules.js", "chute-kept.js", "chute-sending.js", "chute-draft.js", "chute.js"];

    public string Data => $"{Path}/data";

    public string Worker => $"{Path}/worker.js";

    public string Manifest => $"{Path}/app.webmanifest";

    /// <summary>The farm's own, for a visit.</summary>
    /// <param name="visit"><c>next</c> or a day.</param>
    public static ChuteApp OfFarm(string visit) => new($"/visits/{visit}/chute", "/api", $"/visits/{visit}");

    /// <summary>One by a share link.</summary>
    public static ChuteApp OfShare(string token) => new($"/share/{token}/chute", $"/share/{token}/api", $"/share/{token}");

    /// <summary>The addresses of the page's scripts.</summary>
    public static IEnumerable<string> Scripts => s_scripts.Select(Asset.Address);

    /// <summary>Everything that must be on the phone for the page to open without network.</summary>
    public IEnumerable<string> Files =>
        [Path, Manifest, Asset.Address("chute.css"), .. Scripts, Asset.Address("chute-icon.svg"), Asset.Address("chute-icon-192.png"), Asset.Address("chute-icon-512.png")];

    /// <summary>Differs whenever anything of the page does, its language too: then a phone fetches it all anew.</summary>
    public string Version
    {
        get
        {
            var all = string.Join('\n', [.. Files, s_build, Languages.Current]);
            return Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(all)))[..12];
        }
    }

    // The page itself is compiled into this assembly: another build may make another page.
    private static readonly string s_build = typeof(ChuteApp).Module.ModuleVersionId.ToString("N");
}
