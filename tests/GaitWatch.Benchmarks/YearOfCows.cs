using GaitWatch.Simulator;

namespace GaitWatch.Benchmarks;

/// <summary>A recorded year of three hundred cows milked twice or thrice a day, with all that a barn does to a measurement.</summary>
internal static class YearOfCows
{
    /// <summary>Writes the recording and tells how many passages are in it.</summary>
    /// <param name="file">Where to.</param>
    /// <param name="withChute">Whether visits and findings are recorded too.</param>
    public static async Task<int> RecordAsync(string file, bool withChute = false)
    {
        var herd = new SimulatedHerd(HerdSpec.Barn(3, 300, 365));
        var passages = 0;
        await using var stream = new FileStream(file, FileMode.Create, FileAccess.Write, FileShare.None, 1 << 20);
        var transport = new RecordingTransport(stream);
        foreach (var input in BarnFeed.History(herd, new BarnFeedOptions { ImportRegister = false }))
        {
            // Passages and the register are what is timed; what is entered at the chute is left out.
            if (!withChute && input is BarnWrite write && (write.Route.StartsWith("/api/visits/", StringComparison.Ordinal) || write.Route.EndsWith("/findings", StringComparison.Ordinal)))
                continue;
            passages += input is BarnMessage { Retain: false } ? 1 : 0;
            await transport.SendAsync(input, CancellationToken.None);
        }

        return passages;
    }
}
