using System.Collections.Concurrent;
using GaitWatch.Gait;
using GaitWatch.Store;
using Microsoft.Extensions.Logging.Abstractions;
using NSubstitute;

namespace GaitWatch.Barn.Tests.Intakes;

/// <summary>A sender hears only of what is durable. A store that waits or fails stands in for a slow or full disk.</summary>
public class GroupCommitTests
{
    private static StatusInput Status(int n) => new("parlour-exit", true, null, $"{n}");

    private static AppendResult Appended(IReadOnlyList<Input> inputs) => new(inputs.Count, inputs.Count, 0, 0);

    [Fact]
    public async Task Nothing_is_acknowledged_before_its_commit_has_returned()
    {
        var disk = new TaskCompletionSource();
        var inbox = Substitute.For<IInbox>();
        inbox.AppendAsync(default!, default).ReturnsForAnyArgs(async call =>
        {
            await disk.Task;
            return Appended(call.Arg<IReadOnlyList<Input>>());
        });
        await using var running = await Running.StartAsync(inbox);
        var durable = await running.Intake.OfferAsync(Status(1));
        await Eventually.HoldsAsync("the commit is under way", () => inbox.ReceivedCalls().Any());
        Assert.False(durable.IsCompleted);
        disk.SetResult();
        await durable.WaitAsync(TimeSpan.FromSeconds(30));
    }

    [Fact]
    public async Task What_gathers_during_a_commit_goes_into_the_next_in_order()
    {
        var disk = new TaskCompletionSource();
        var batches = new ConcurrentQueue<IReadOnlyList<Input>>();
        var inbox = Substitute.For<IInbox>();
        inbox.AppendAsync(default!, default).ReturnsForAnyArgs(async call =>
        {
            batches.Enqueue(call.Arg<IReadOnlyList<Input>>());
            await disk.Task;
            return Appended(call.Arg<IReadOnlyList<Input>>());
        });
        await using var running = await Running.StartAsync(inbox);
        var first = await running.Intake.OfferAsync(Status(0));
        await Eventually.HoldsAsync("the first commit is under way", () => !batches.IsEmpty);
        var others = new List<Task>();
        for (var i = 1; i <= 500; i++)
            others.Add(await running.Intake.OfferAsync(Status(i)));
        disk.SetResult();
        await Task.WhenAll(others.Append(first)).WaitAsync(TimeSpan.FromSeconds(30));
        Assert.Equal([1, 500], batches.Select(batch => batch.Count));
        Assert.Equal(Enumerable.Range(0, 501).Select(i => $"{i}"), batches.SelectMany(batch => batch).Cast<StatusInput>().Select(status => status.Firmware));
    }

    [Fact]
    public async Task While_the_disk_is_full_nothing_is_acknowledged_and_senders_wait_within_a_bound()
    {
        var full = true;
        var inbox = Substitute.For<IInbox>();
        inbox.AppendAsync(default!, default).ReturnsForAnyArgs(call => Volatile.Read(ref full)
            ? throw new StoreUnavailableException("The disk is full.")
            : Task.FromResult(Appended(call.Arg<IReadOnlyList<Input>>())));
        var options = Some.Options with { MostWaitingBytes = 20_000 };
        await using var running = await Running.StartAsync(inbox, options);
        var taken = new List<Task>();
        ValueTask<Task> waiting;
        do
            taken.Add(await (waiting = running.Intake.OfferAsync(Status(taken.Count))));
        while (running.Intake.WaitingBytes < options.MostWaitingBytes && taken.Count < 10_000);
        Assert.InRange(taken.Count, 2, 100);
        var turnedBack = running.Intake.OfferAsync(Status(-1)).AsTask();
        await Eventually.HoldsAsync("the commit was tried again", () => inbox.ReceivedCalls().Count() >= 2);
        Assert.False(turnedBack.IsCompleted);
        Assert.All(taken, durable => Assert.False(durable.IsCompleted));

        Volatile.Write(ref full, false);
        taken.Add(await turnedBack.WaitAsync(TimeSpan.FromSeconds(60)));
        await Task.WhenAll(taken).WaitAsync(TimeSpan.FromSeconds(60));
        await Eventually.HoldsAsync("all memory is given back", () => running.Intake.WaitingBytes == 0);
    }

    [Fact]
    public async Task When_the_service_stops_with_a_full_disk_senders_are_told_to_send_again()
    {
        var inbox = Substitute.For<IInbox>();
        inbox.AppendAsync(default!, default).ReturnsForAnyArgs<Task<AppendResult>>(_ => throw new StoreUnavailableException("The disk is full."));
        var running = await Running.StartAsync(inbox);
        var durable = await running.Intake.OfferAsync(Status(1));
        await Eventually.HoldsAsync("the commit was tried", () => inbox.ReceivedCalls().Any());
        await running.DisposeAsync();
        await Assert.ThrowsAsync<IntakeClosedException>(() => durable.WaitAsync(TimeSpan.FromSeconds(30)));
        await Assert.ThrowsAsync<IntakeClosedException>(async () => await running.Intake.OfferAsync(Status(2)));
    }

    [Fact]
    public async Task What_waits_when_the_service_stops_is_still_made_durable()
    {
        var disk = new TaskCompletionSource();
        var inbox = Substitute.For<IInbox>();
        inbox.AppendAsync(default!, default).ReturnsForAnyArgs(async call =>
        {
            await disk.Task;
            return Appended(call.Arg<IReadOnlyList<Input>>());
        });
        var running = await Running.StartAsync(inbox);
        var durable = new[] { await running.Intake.OfferAsync(Status(1)), await running.Intake.OfferAsync(Status(2)) };
        var stopping = running.DisposeAsync();
        disk.SetResult();
        await stopping;
        await Task.WhenAll(durable).WaitAsync(TimeSpan.FromSeconds(30));
    }

    [Fact]
    public async Task An_input_that_the_store_cannot_hold_is_set_aside_and_holds_up_no_other()
    {
        var kept = new ConcurrentQueue<Input>();
        var inbox = Substitute.For<IInbox>();
        inbox.AppendAsync(default!, default).ReturnsForAnyArgs(call =>
        {
            var inputs = call.Arg<IReadOnlyList<Input>>();
            if (inputs.OfType<StatusInput>().Any(status => status.Firmware == "7"))
                throw new ArgumentException("a defect");
            foreach (var input in inputs)
                kept.Enqueue(input);
            return Task.FromResult(Appended(inputs));
        });
        await using var running = await Running.StartAsync(inbox);
        var durable = new List<Task>();
        for (var i = 0; i < 16; i++)
            durable.Add(await running.Intake.OfferAsync(Status(i)));
        await Task.WhenAll(durable).WaitAsync(TimeSpan.FromSeconds(30));
        Assert.Equal(16, kept.Count);
        var setAside = Assert.Single(kept.OfType<RejectedInput>());
        Assert.Equal(("status of 'parlour-exit'", "not-storable"), (setAside.Topic, setAside.Reason));
        Assert.Equal("The store refused it (ArgumentException): a defect of GaitWatch, please report it.", setAside.Detail);
        Assert.DoesNotContain(kept.OfType<StatusInput>(), status => status.Firmware == "7");
    }

    [Fact]
    public async Task A_frame_counts_with_the_memory_it_takes()
    {
        var intake = new Intake(Some.Options);
        await intake.OfferAsync(new FrameInput("p", new Frame(0, Some.Now, 200, [new float[100], new float[100]])));
        Assert.Equal(256 + 800, intake.WaitingBytes);
    }

    private sealed class Running : IAsyncDisposable
    {
        private readonly TestStore _store;
        private readonly GroupCommit _commit;

        private Running(TestStore store, Intake intake, GroupCommit commit)
        {
            _store = store;
            Intake = intake;
            _commit = commit;
        }

        public Intake Intake { get; }

        public static async Task<Running> StartAsync(IInbox inbox, BarnOptions? options = null)
        {
            var store = await TestStore.OpenAsync();
            var intake = new Intake(options ?? Some.Options);
            var commit = new GroupCommit(
                intake, inbox, options ?? Some.Options, new BarnMetrics(store.Store), TimeProvider.System, NullLogger<GroupCommit>.Instance);
            await commit.StartAsync(CancellationToken.None);
            return new Running(store, intake, commit);
        }

        public async ValueTask DisposeAsync()
        {
            await _commit.StopAsync(CancellationToken.None);
            _commit.Dispose();
            await _store.DisposeAsync();
        }
    }
}
