using QRCoder;

namespace GaitWatch.Web;

/// <summary>A link as a picture that a phone's camera reads: a QR code (ISO/IEC 18004), dark on light in any colour scheme.</summary>
internal static class SharePicture
{
    // White around the code, modules: what the standard asks for.
    private const int QuietModules = 4;

    /// <summary>Draws it as SVG.</summary>
    public static string Of(string address, string label)
    {
        using var code = QRCodeGenerator.GenerateQrCode(address, QRCodeGenerator.ECCLevel.M);
        var modules = code.ModuleMatrix;
        // The library's matrix has its own white border; ours is drawn by the box.
        var path = new System.Text.StringBuilder();
        for (var y = 0; y < modules.Count; y++)
        {
            for (var x = 0; x < modules[y].Count; x++)
            {
                if (modules[y][x])
                    path.Append(System.Globalization.CultureInfo.InvariantCulture, $"M{x + QuietModules} {y + QuietModules}h1v1h-1z");
            }
        }

        var size = modules.Count + (2 * QuietModules);
        return $"""<svg class="share-code" viewBox="0 0 {size} {size}" role="img" aria-label="{System.Text.Encodings.Web.HtmlEncoder.Default.Encode(label)}"><rect width="{size}" height="{size}" fill="#fff"/><path d="{path}" fill="#000"/></svg>""";
    }
}
