using System.Net;
using System.Net.Sockets;

namespace GaitWatch.Barn.Tests;

internal static class FreePort
{
    /// <summary>A port of the loopback that nobody listens on now.</summary>
    public static int Find()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }
}
