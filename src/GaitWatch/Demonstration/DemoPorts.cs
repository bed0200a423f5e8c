using System.Globalization;
using System.Net;
using System.Net.Sockets;
using GaitWatch.Gait;

namespace GaitWatch;

/// <summary>The demo's settings: the contract's platform, the embedded broker, the usual ports where they are free and others where not.</summary>
internal static class DemoPorts
{
    /// <summary>Chooses, and says which where they are not the usual ones.</summary>
    public static GaitWatchSettings Choose(GaitWatchSettings settings, TextWriter tell)
    {
        var mqtt = FreeOr(settings.Mqtt.Port);
        if (mqtt != settings.Mqtt.Port)
            tell.WriteLine($"Port {settings.Mqtt.Port} is taken; the demo's broker listens at {mqtt}.");
        var wanted = ServiceConnection.OwnAddress(settings.Http).Port;
        var http = FreeOr(wanted);
        if (http != wanted)
            tell.WriteLine($"Port {wanted} is taken; the demo's pages are at {http}.");
        return settings with
        {
            Mqtt = new MqttSettings { Embedded = true, Host = "127.0.0.1", Port = mqtt, Tls = false },
            Http = new HttpSettings { Urls = [string.Create(CultureInfo.InvariantCulture, $"http://127.0.0.1:{http}")] },
            Platforms = [TwinPlate.Default],
        };
    }

    private static int FreeOr(int wanted) => IsFree(wanted) ? wanted : Any();

    private static bool IsFree(int port)
    {
        try
        {
            using var listener = new TcpListener(IPAddress.Loopback, port);
            listener.Start();
            return true;
        }
        catch (SocketException)
        {
            return false;
        }
    }

    private static int Any()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }
}
