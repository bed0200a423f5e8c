using System.Diagnostics;

namespace GaitWatch.Barn.Tests;

/// <summary>Waits for a condition, not for a time: returns as soon as it holds, fails with its name when it never does.</summary>
internal static class Eventually
{
    public static async Task HoldsAsync(string what, Func<Task<bool>> condition, TimeSpan? within = null)
    {
        var limit = within ?? TimeSpan.FromSeconds(60);
        var clock = Stopwatch.StartNew();
        while (!await condition())
        {
            if (clock.Elapsed > limit)
                Assert.Fail($"Not within {limit.TotalSeconds:0} s: {what}");
            await Task.Delay(20);
        }
    }

    public static Task HoldsAsync(string what, Func<bool> condition, TimeSpan? within = null) =>
        HoldsAsync(what, () => Task.FromResult(condition()), within);
}
