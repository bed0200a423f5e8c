using GaitWatch.Store;

namespace GaitWatch.Barn.Tests.Analysis;

/// <summary>
/// The central law: the state after a set of inputs does not depend on their order, their number of copies, how late they
/// came, or where the service stopped between.
/// </summary>
public class StateLawTests
{
    // Many are lame and treated, so that recoveries are under way all the time.
    private static readonly Lazy<List<Input>> History = new(() => Scenario.History(seed: 5, cows: 16, days: 100, cases: 200));

    // Two milkings, so that what an empty platform reads is compared between them.
    private static readonly Lazy<List<Input>> Crossings = new(() =>
    [
        .. Scenario.Crossings(seed: 3, cows: 10, crossings: 35, from: Some.Now),
        .. Scenario.Crossings(seed: 3, cows: 10, crossings: 30, from: Some.Now.AddHours(11)),
    ]);

    [Fact]
    public async Task The_history_of_the_tests_raises_alerts_and_late_reads_so_that_it_proves_something()
    {
        await using var folding = await Folding.OpenAsync();
        var lines = await folding.AllAsync(History.Value);
        Assert.True(lines.Count(line => line.StartsWith("alert ", StringComparison.Ordinal)) >= 3, "alerts");
        Assert.True(lines.Count(line => line.StartsWith("assessment ", StringComparison.Ordinal)) > 2000, "assessments");
        Assert.True(lines.Count(line => line.StartsWith("recovery ", StringComparison.Ordinal)) >= 3, "recoveries");
        Assert.Contains(lines, line => line.StartsWith("recovery ", StringComparison.Ordinal) && !line.Contains("\"days\":[]", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Kept_recoveries_are_what_a_judgement_from_scratch_says()
    {
        await using var folding = await Folding.OpenAsync();
        var kept = await folding.AllAsync(History.Value);
        // Without the mark nothing kept is believed, and the reader judges from passages, alerts and findings.
        await using (var connection = new Microsoft.Data.Sqlite.SqliteConnection($"Data Source={Path.Combine(folding.Folder, BarnStore.FileName)}"))
        {
            await connection.OpenAsync();
            await using var command = connection.CreateCommand();
            command.CommandText = """DELETE FROM marks WHERE "Name" = 'recoveries-version'""";
            Assert.Equal(1, await command.ExecuteNonQueryAsync());
        }

        Fingerprint.Same(kept, await Fingerprint.OfAsync(folding.Store), "from scratch");
        // The worker judges every foot anew as soon as it has something to do.
        await folding.AppendAsync(Scenario.History(seed: 5, cows: 16, days: 101, cases: 200)[^1]);
        await folding.Worker.CatchUpAsync();
        await using var state = await folding.Store.BeginAsync();
        Assert.Equal(GaitWatch.Lameness.RecoveryAssessor.Version, state.RecoveriesVersion);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public async Task Shuffled_in_blocks_doubled_late_and_with_restarts_the_history_gives_the_same_state(int seed)
    {
        await using var plain = await Folding.OpenAsync();
        var expected = await plain.AllAsync(History.Value);
        await using var rough = await Folding.OpenAsync();
        await RoughlyAsync(rough, History.Value, new Random(seed), perCommit: 400);
        Fingerprint.Same(expected, await Fingerprint.OfAsync(rough.Store), $"seed {seed}");
    }

    // Seconds to hours of disorder, as several platforms or many messages in flight bring it: the state is taken up again from
    // a moment ago rather than from a day's beginning.
    [Theory]
    [InlineData(1, 5)]
    [InlineData(2, 40)]
    [InlineData(3, 150)]
    public async Task Overtaking_by_some_places_the_history_gives_the_same_state(int seed, int places)
    {
        await using var plain = await Folding.OpenAsync();
        var expected = await plain.AllAsync(History.Value);
        await using var rough = await Folding.OpenAsync();
        var random = new Random(seed);
        var overtaking = History.Value.Where(input => input is not StatusInput)
            .Select((input, place) => (Input: input, Place: place + random.Next(places + 1)))
            .OrderBy(one => one.Place).Select(one => one.Input);
        foreach (var chunk in overtaking.Concat(History.Value.OfType<StatusInput>()).Chunk(35))
        {
            await rough.AppendAsync(chunk);
            await rough.Worker.CatchUpAsync();
            if (random.Next(25) == 0)
                await rough.RestartAsync();
        }

        Fingerprint.Same(expected, await Fingerprint.OfAsync(rough.Store), $"seed {seed}");
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public async Task Shuffled_doubled_and_with_restarts_frames_and_tags_give_the_same_state(int seed)
    {
        await using var plain = await Folding.OpenAsync();
        var expected = await plain.AllAsync(Crossings.Value);
        Assert.True(expected.Count(line => line.StartsWith("passage ", StringComparison.Ordinal)) >= 50, "passages");
        Assert.Contains(expected, line => line.StartsWith("platform ", StringComparison.Ordinal) && !line.Contains("\"zeroDriftKg\":0,", StringComparison.Ordinal));
        Assert.True(expected.Count(line => line.Contains("\"quality\":\"accepted\"", StringComparison.Ordinal)) >= 25, "accepted passages");
        await using var rough = await Folding.OpenAsync();
        await RoughlyAsync(rough, Crossings.Value, new Random(seed), perCommit: 60);
        Fingerprint.Same(expected, await Fingerprint.OfAsync(rough.Store), $"seed {seed}");
    }

    [Fact]
    public async Task One_input_at_a_time_gives_what_all_at_once_gives()
    {
        var inputs = Crossings.Value.Take(150).Concat(Crossings.Value.TakeLast(150)).ToList();
        await using var plain = await Folding.OpenAsync();
        var expected = await plain.AllAsync(inputs);
        await using var slow = await Folding.OpenAsync();
        foreach (var input in inputs)
        {
            await slow.AppendAsync(input);
            await slow.Worker.CatchUpAsync();
        }

        Fingerprint.Same(expected, await Fingerprint.OfAsync(slow.Store), "one at a time");
    }

    [Fact]
    public async Task Backwards_gives_what_forwards_gives()
    {
        var inputs = Crossings.Value.Take(150).Concat(Crossings.Value.TakeLast(150)).ToList();
        await using var plain = await Folding.OpenAsync();
        var expected = await plain.AllAsync(inputs);
        await using var backwards = await Folding.OpenAsync();
        foreach (var input in Enumerable.Reverse(inputs))
        {
            await backwards.AppendAsync(input);
            await backwards.Worker.CatchUpAsync();
        }

        Fingerprint.Same(expected, await Fingerprint.OfAsync(backwards.Store), "backwards");
    }

    private static async Task RoughlyAsync(Folding folding, IReadOnlyList<Input> inputs, Random random, int perCommit)
    {
        var doubled = inputs.Concat(inputs.Where(input => input is not StatusInput && random.Next(5) == 0)).ToArray();
        random.Shuffle(doubled);
        // A status is ordered by arrival, by the contract.
        foreach (var chunk in doubled.Where(input => input is not StatusInput).Concat(inputs.OfType<StatusInput>()).Chunk(perCommit))
        {
            await folding.AppendAsync(chunk);
            if (random.Next(3) == 0)
                await folding.Worker.RunOnceAsync();
            if (random.Next(6) == 0)
                await folding.RestartAsync();
        }

        await folding.Worker.CatchUpAsync();
    }
}
