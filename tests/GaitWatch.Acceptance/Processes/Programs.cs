using System.Net;
using System.Net.Sockets;

namespace GaitWatch.Acceptance;

/// <summary>The programs the tests run, and where they listen.</summary>
internal static class Programs
{
    public const string Chromium = "/usr/bin/chromium";

    /// <summary>The program under test, as it was built beside these tests in the same configuration.</summary>
    public static string GaitWatch { get; } = FindGaitWatch();

    public static string Mosquitto { get; } = File.Exists("/usr/sbin/mosquitto") ? "/usr/sbin/mosquitto" : "mosquitto";

    /// <summary>A TCP port of loopback that nobody held a moment ago.</summary>
    public static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }

    private static string FindGaitWatch()
    {
        // .../tests/GaitWatch.Acceptance/bin/{configuration}/net10.0/
        var framework = new DirectoryInfo(AppContext.BaseDirectory.TrimEnd(Path.DirectorySeparatorChar));
        var configuration = framework.Parent!;
        var root = configuration.Parent!.Parent!.Parent!.Parent!.FullName;
        var path = Path.Combine(root, "src", "GaitWatch", "bin", configuration.Name, framework.Name, "gaitwatch.dll");
        return File.Exists(path) ? path : throw new FileNotFoundException($"{path} is not there: build the solution first.");
    }
}
