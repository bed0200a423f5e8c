using System.Security.Cryptography;
using System.Text;

namespace GaitWatch.Barn;

/// <summary>Compares names and passwords in a time that tells nothing of where they differ.</summary>
internal static class BrokerPassword
{
    /// <summary>Whether a device may connect.</summary>
    public static bool Admits(MqttOptions options, string? username, string? password) =>
        options.Username is null || (Same(options.Username, username) & Same(options.Password ?? "", password));

    private static bool Same(string right, string? given) => CryptographicOperations.FixedTimeEquals(
        SHA256.HashData(Encoding.UTF8.GetBytes(right)), SHA256.HashData(Encoding.UTF8.GetBytes(given ?? "")));
}
