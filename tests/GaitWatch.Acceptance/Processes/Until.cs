using System.Diagnostics;

namespace GaitWatch.Acceptance;

/// <summary>Waits for a condition by looking again and again; how long is only how long a broken one takes to fail.</summary>
internal static class Until
{
    private static readonly TimeSpan Again = TimeSpan.FromMilliseconds(100);

    /// <summary>Looks until what is found is wanted.</summary>
    /// <param name="what">What is waited for, in words, for the failure.</param>
    /// <param name="look">Looks; an exception counts as not yet.</param>
    /// <param name="wanted">Whether it is found.</param>
    /// <param name="patience">When to give up.</param>
    /// <param name="told">What to add to the failure.</param>
    public static async Task<T> AsyncOf<T>(string what, Func<Task<T>> look, Func<T, bool> wanted, TimeSpan? patience = null, Func<string>? told = null)
    {
        var since = Stopwatch.GetTimestamp();
        var limit = patience ?? TimeSpan.FromSeconds(120);
        var last = "nothing";
        while (Stopwatch.GetElapsedTime(since) < limit)
        {
            try
            {
                var found = await look();
                if (wanted(found))
                    return found;
                last = found?.ToString() ?? "null";
            }
            catch (Exception e) when (e is HttpRequestException or IOException or TaskCanceledException or InvalidOperationException or System.Text.Json.JsonException)
            {
                last = e.Message;
            }

            await Task.Delay(Again);
        }

        throw new TimeoutException($"Waited {limit.TotalSeconds:0} s for {what}; found {last}.\n{told?.Invoke()}");
    }
}
