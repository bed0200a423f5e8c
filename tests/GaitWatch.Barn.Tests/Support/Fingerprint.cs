using System.Text.Json;
using GaitWatch.Store;

namespace GaitWatch.Barn.Tests;

/// <summary>The whole derived state as text, a line a fact. When something was revised is left out: that tells of arrival.</summary>
internal static class Fingerprint
{
    public static async Task<List<string>> OfAsync(BarnStore store)
    {
        var reader = store.Reader;
        var lines = new List<string>();
        foreach (var passage in await reader.PassagesAsync(null, null, null, null, Page.All))
            lines.Add("passage " + Write(passage));
        foreach (var cow in await reader.CowsAsync(Page.All))
        {
            lines.Add("cow " + Write(cow));
            foreach (var assessment in await reader.AssessmentsOfAsync(cow.Cow, null, null))
                lines.Add("assessment " + Write(assessment));
            foreach (var recovery in await reader.RecoveriesOfAsync(cow.Cow))
                lines.Add("recovery " + Write(recovery));
        }

        foreach (var alert in await reader.AlertsAsync(null, null, null, null, Page.All))
        {
            lines.Add("alert " + Write(alert with { RevisedAt = null }));
            foreach (var step in await reader.AlertStepsAsync(alert.Id))
                lines.Add("step " + Write(step));
        }

        foreach (var platform in await reader.PlatformsAsync())
            lines.Add("platform " + Write(platform));
        foreach (var task in await reader.FollowUpsAsync(await reader.NewestDayAsync()))
            lines.Add("task " + Write(FollowUpView.Of(task)));
        foreach (var row in (await reader.TrimListAsync(null)).Rows.Select(TrimListRowView.Of))
            lines.Add("list " + Write(row));
        return lines;
    }

    /// <summary>Fails at the first difference, with both lines.</summary>
    public static void Same(List<string> expected, List<string> actual, string what)
    {
        for (var i = 0; i < Math.Min(expected.Count, actual.Count); i++)
        {
            if (expected[i] != actual[i])
                Assert.Fail($"{what}: line {i} of {expected.Count}/{actual.Count}\nexpected {expected[i]}\nactual   {actual[i]}");
        }

        Assert.True(expected.Count == actual.Count, $"{what}: {expected.Count} lines expected, {actual.Count} found; the next is {expected.Concat(actual).ElementAtOrDefault(Math.Min(expected.Count, actual.Count))}");
    }

    private static string Write<T>(T value) => JsonSerializer.Serialize(value, ContractJson.Options);
}
