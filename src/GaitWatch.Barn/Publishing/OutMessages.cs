using System.Text.Json;
using GaitWatch.Store;

namespace GaitWatch.Barn;

/// <summary>What is to stand on the service's own topics, as the store has it.</summary>
internal static class OutMessages
{
    /// <summary>Topic and payload of everything that is to be retained.</summary>
    public static async Task<Dictionary<string, byte[]>> OfAsync(BarnReader reader, TopicScheme topics, CancellationToken cancellation)
    {
        var wanted = new Dictionary<string, byte[]>(StringComparer.Ordinal);
        // Worst first: of several alerts of one cow the first stands.
        foreach (var alert in await reader.FlagsAsync(await reader.NewestDayAsync(cancellation), cancellation))
            wanted.TryAdd(topics.AlertOf(alert.Cow), JsonSerializer.SerializeToUtf8Bytes(alert, ContractJson.Options));
        wanted[topics.TrimList] = JsonSerializer.SerializeToUtf8Bytes(
            (await reader.TrimListAsync(visit: null, cancellation)).Rows.Select(TrimListRowView.Of), ContractJson.Options);
        foreach (var platform in await reader.PlatformsAsync(cancellation))
            wanted[topics.HealthOf(platform.Id)] = JsonSerializer.SerializeToUtf8Bytes(platform, ContractJson.Options);
        return wanted;
    }
}
