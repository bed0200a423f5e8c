namespace GaitWatch.Acceptance;

/// <summary>Debian's <c>mosquitto_sub</c>: a subscriber that is not ours.</summary>
internal static class MosquittoSub
{
    /// <summary>The retained message of a topic; waits for it when it is not there yet.</summary>
    public static async Task<string> RetainedAsync(int port, string topic)
    {
        await using var process = ChildProcess.Start("mosquitto_sub", ["-h", "127.0.0.1", "-p", $"{port}", "-q", "1", "-t", topic, "-C", "1", "-W", "60"]);
        var code = await process.ExitAsync(TimeSpan.FromSeconds(90));
        return code == 0 ? process.Said : throw new TimeoutException($"No retained message on {topic} within a minute (mosquitto_sub ended with {code}).");
    }
}
