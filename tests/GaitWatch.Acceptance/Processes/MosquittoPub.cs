namespace GaitWatch.Acceptance;

/// <summary>Debian's <c>mosquitto_pub</c>: a client that is not ours, and that gives no client id (MQTT 3.1.1).</summary>
internal static class MosquittoPub
{
    /// <summary>Publishes messages to one topic, a line each, QoS 1, and waits until all are acknowledged.</summary>
    public static async Task LinesAsync(int port, string topic, IEnumerable<string> payloads)
    {
        await using var process = ChildProcess.Start("mosquitto_pub", ["-h", "127.0.0.1", "-p", $"{port}", "-q", "1", "-t", topic, "-l"]);
        foreach (var payload in payloads)
            await process.Input.WriteLineAsync(payload);
        process.Input.Close();
        var code = await process.ExitAsync(TimeSpan.FromMinutes(5));
        if (code != 0)
            throw new InvalidOperationException($"mosquitto_pub to {topic} ended with {code}: {process.Said}");
    }

    /// <summary>Publishes a file as one message, QoS 1.</summary>
    public static async Task<int> FileAsync(int port, string topic, string file)
    {
        await using var process = ChildProcess.Start("mosquitto_pub", ["-h", "127.0.0.1", "-p", $"{port}", "-q", "1", "-t", topic, "-f", file]);
        return await process.ExitAsync(TimeSpan.FromMinutes(2));
    }
}
