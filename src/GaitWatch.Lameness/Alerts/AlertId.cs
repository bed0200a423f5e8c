using System.Buffers.Text;
using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using GaitWatch.Gait;

namespace GaitWatch.Lameness;

/// <summary>An alert's id: a digest of cow, pattern, leg and the instant it was raised, so that a replay gives it again.</summary>
internal static class AlertId
{
    /// <summary>16 URL-safe characters.</summary>
    public static string Of(string cow, AlertPattern pattern, Leg leg, DateTimeOffset raisedAt)
    {
        var text = string.Create(
            CultureInfo.InvariantCulture, $"{cow}\n{pattern.WireName()}\n{leg.WireName()}\n{raisedAt.UtcTicks}");
        var digest = SHA256.HashData(Encoding.UTF8.GetBytes(text));
        return Base64Url.EncodeToString(digest.AsSpan(0, 12));
    }
}
