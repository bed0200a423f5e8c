namespace GaitWatch.Web.Tests;

/// <summary>Open pages hear of what changes.</summary>
public sealed class LiveTests : IAsyncLifetime
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(60);
    private readonly FarmHost _farm = new();

    public Task InitializeAsync() => _farm.InitializeAsync();

    public Task DisposeAsync() => _farm.DisposeAsync();

    [Fact]
    public async Task A_crossing_is_told_and_a_burst_is_told_once_or_twice()
    {
        await using var events = await EventsAsync(null);
        Assert.Equal("listening", (await events.NextAsync()).Kind);
        await _farm.PassAsync([.. Enumerable.Range(0, 50).Select(i => Some.Passage($"p{i}", 417, Some.Now.AddHours(-1).AddMinutes(i / 2.0)))]);
        var changed = await events.NextAsync();
        Assert.Equal("changed", changed.Kind);
        Assert.InRange(long.Parse(changed.Id), 1, _farm.Store.Progress.Folded);
    }

    [Fact]
    public async Task Who_comes_back_hears_at_once_of_what_was_missed()
    {
        await _farm.PassAsync(Some.Passage("a", 417, Some.Now.AddHours(-1)));
        var seen = _farm.Store.Progress.Folded;
        await _farm.PassAsync(Some.Passage("b", 417, Some.Now.AddMinutes(-30)));
        await using var events = await EventsAsync($"{seen}");
        Assert.Equal(("listening", $"{seen}"), await events.NextAsync());
        Assert.Equal(("changed", $"{_farm.Store.Progress.Folded}"), await events.NextAsync());
    }

    private async Task<Events> EventsAsync(string? lastSeen)
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, "/live");
        if (lastSeen is not null)
            request.Headers.Add("Last-Event-ID", lastSeen);
        var response = await _farm.Http.SendAsync(request, HttpCompletionOption.ResponseHeadersRead);
        Assert.Equal("text/event-stream", response.Content.Headers.ContentType?.MediaType);
        return new Events(response, new StreamReader(await response.Content.ReadAsStreamAsync()));
    }

    private sealed class Events(HttpResponseMessage response, StreamReader lines) : IAsyncDisposable
    {
        public async Task<(string Kind, string Id)> NextAsync()
        {
            var (kind, id) = ("", "");
            while (await lines.ReadLineAsync().WaitAsync(Patience) is { } line)
            {
                if (line.Length == 0)
                    return (kind, id);
                if (line.StartsWith("event: ", StringComparison.Ordinal))
                    kind = line["event: ".Length..];
                if (line.StartsWith("id: ", StringComparison.Ordinal))
                    id = line["id: ".Length..];
            }

            throw new InvalidOperationException("The stream ended.");
        }

        public ValueTask DisposeAsync()
        {
            lines.Dispose();
            response.Dispose();
            return ValueTask.CompletedTask;
        }
    }
}
