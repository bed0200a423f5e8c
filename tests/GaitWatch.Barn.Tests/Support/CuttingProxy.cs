using System.Collections.Concurrent;
using System.Net;
using System.Net.Sockets;

namespace GaitWatch.Barn.Tests;

/// <summary>Passes connections on to a port and can cut all of them at once, as a pulled cable would.</summary>
internal sealed class CuttingProxy : IAsyncDisposable
{
    private readonly TcpListener _listener = new(IPAddress.Loopback, 0);
    private readonly ConcurrentBag<Socket> _open = [];
    private readonly int _target;
    private readonly Task _accepting;

    public CuttingProxy(int target)
    {
        _target = target;
        _listener.Start();
        _accepting = AcceptAsync();
    }

    public int Port => ((IPEndPoint)_listener.LocalEndpoint).Port;

    public void CutAll()
    {
        while (_open.TryTake(out var socket))
        {
            // A reset, not a goodbye.
            socket.LingerState = new LingerOption(true, 0);
            socket.Dispose();
        }
    }

    public async ValueTask DisposeAsync()
    {
        _listener.Stop();
        CutAll();
        await _accepting;
    }

    private async Task AcceptAsync()
    {
        while (true)
        {
            try
            {
                var near = await _listener.AcceptSocketAsync();
                var far = new Socket(SocketType.Stream, ProtocolType.Tcp);
                await far.ConnectAsync(IPAddress.Loopback, _target);
                _open.Add(near);
                _open.Add(far);
                _ = PumpAsync(near, far);
                _ = PumpAsync(far, near);
            }
            catch (Exception fault) when (fault is SocketException or ObjectDisposedException or InvalidOperationException)
            {
                return;
            }
        }
    }

    private static async Task PumpAsync(Socket from, Socket to)
    {
        var buffer = new byte[16 * 1024];
        try
        {
            int read;
            while ((read = await from.ReceiveAsync(buffer)) > 0)
                await to.SendAsync(buffer.AsMemory(0, read));
        }
        catch (Exception fault) when (fault is SocketException or ObjectDisposedException)
        {
        }
    }
}
