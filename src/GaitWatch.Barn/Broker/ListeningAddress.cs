using System.Net;
using System.Net.Sockets;

namespace GaitWatch.Barn;

/// <summary>Where the broker inside listens.</summary>
/// <param name="V4">The IPv4 address; null: none.</param>
/// <param name="V6">The IPv6 address; null: none.</param>
internal sealed record ListeningAddress(IPAddress? V4, IPAddress? V6)
{
    /// <summary>Finds the addresses a setting names.</summary>
    /// <exception cref="BrokerStartException">The name leads to no address.</exception>
    public static async Task<ListeningAddress> OfAsync(string host, CancellationToken cancellation)
    {
        if (IPAddress.TryParse(host, out var address))
            return address.AddressFamily == AddressFamily.InterNetworkV6 ? new(null, address) : new(address, null);
        try
        {
            var addresses = await Dns.GetHostAddressesAsync(host, cancellation);
            return new(
                addresses.FirstOrDefault(one => one.AddressFamily == AddressFamily.InterNetwork),
                addresses.FirstOrDefault(one => one.AddressFamily == AddressFamily.InterNetworkV6));
        }
        catch (SocketException fault)
        {
            throw new BrokerStartException(
                $"GaitWatch:Mqtt:Host is '{host}', which is no address of this machine ({fault.Message}): 127.0.0.1 for this machine alone, 0.0.0.0 for the barn's network.", fault);
        }
    }
}
