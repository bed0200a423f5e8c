using System.Net;
using System.Net.Sockets;

namespace GaitWatch.Tests;

/// <summary>A TCP port of loopback that nobody held a moment ago.</summary>
internal static class FreePort
{
    public static int Take()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }
}
