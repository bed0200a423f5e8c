using GaitWatch.Gait;
using GaitWatch.Store;

namespace GaitWatch.Barn;

/// <summary>Brings the crossings of one platform up to date with the frames and tags that came in.</summary>
internal sealed class CrossingUpdate
{
    private readonly TwinPlate _platform;
    private readonly TimeSpan _tagWindow;
    private readonly FrameWindows _windows;

    // The end of the recording at which the plates were last seen empty: nothing stands there that a later frame could end.
    private DateTimeOffset? _emptyEnd;

    public CrossingUpdate(TwinPlate platform, GaitOptions options)
    {
        _platform = platform;
        _tagWindow = options.TagWindow;
        _windows = new FrameWindows(new CrossingAnalyser(platform, options));
    }

    /// <summary>Makes of the platform's crossings what the kept frames and tags tell.</summary>
    /// <param name="change">The change.</param>
    /// <param name="frames">Where frames came in.</param>
    /// <param name="tags">Where tags came in.</param>
    /// <param name="keptFrom">From when on frames and tags are kept; null: all are.</param>
    /// <param name="failed">Told of a span that cannot be analysed; it is left as it stands.</param>
    public async Task<PlatformPassages> RunAsync(
        StateChange change, IReadOnlyList<InputSpan> frames, IReadOnlyList<InputSpan> tags, DateTimeOffset? keptFrom, Action<InputSpan, Exception> failed)
    {
        var passages = new PlatformPassages(change, _platform.Id);
        var moved = new List<TagChain>();
        foreach (var span in await WithBrokenOffAsync(change, frames))
        {
            FrameWindow? window;
            try
            {
                window = await _windows.AroundAsync(change, span, keptFrom);
            }
            catch (Exception fault) when (fault is not (StoreUnavailableException or OperationCanceledException))
            {
                failed(span, fault);
                continue;
            }

            if (window is null)
                continue;
            await ApplyAsync(window, span, passages, moved);
            await change.WriteZerosAsync(_platform.Id, [.. CrossingZeros.Of(window)]);
            if (window is { After: null, Analysis.LoadedSince: null })
                _emptyEnd = window.To;
        }

        moved.AddRange(tags.Select(span => new TagChain(span.From, span.To)));
        await AssignTagsAsync(change, passages, moved, keptFrom);
        return passages;
    }

    /// <summary>The spans, and before each that begins a recording anew the end of the one before it: a load left standing there is over now.</summary>
    private async Task<List<InputSpan>> WithBrokenOffAsync(StateChange change, IReadOnlyList<InputSpan> spans)
    {
        var all = new List<InputSpan>();
        foreach (var span in spans.OrderBy(span => span.From))
        {
            var (before, _) = await change.FramesAroundAsync(_platform.Id, span.From, span.From);
            var isLookedAt = all is [.., var last] && before >= last.From && before <= last.To;
            if (before is { } end && span.From - end > FrameWindow.LongestJoinedGap && end != _emptyEnd && !isLookedAt)
                all.Add(new InputSpan(_platform.Id, end, end));
            all.Add(span);
        }

        return all;
    }

    private async Task ApplyAsync(FrameWindow window, InputSpan span, PlatformPassages passages, List<TagChain> moved)
    {
        var believed = window.Believed();
        var first = window.From < span.From - FrameWindow.LongestLoad ? window.From : span.From - FrameWindow.LongestLoad;
        var standing = (await passages.StartedInAsync(first, window.To)).ToDictionary(passage => passage.StartedAt);
        foreach (var crossing in believed)
        {
            if (standing.Remove(crossing.FirstContact, out var was))
            {
                passages.Put(crossing.ToPassage(_platform.Id, PassageTag.Of(was)));
                if (was.EndedAt == crossing.LastLift)
                    continue;
            }
            else
            {
                passages.Put(crossing.ToPassage(_platform.Id, PassageTag.None));
            }

            moved.Add(new TagChain(crossing.FirstContact, crossing.LastLift));
        }

        foreach (var gone in standing.Values.Where(passage => IsRefuted(passage, window, span)))
        {
            passages.Remove(gone);
            moved.Add(new TagChain(gone.StartedAt, gone.EndedAt));
        }
    }

    /// <summary>Whether a crossing that was not found again is no more.</summary>
    private static bool IsRefuted(Passage passage, FrameWindow window, InputSpan span)
    {
        if (window.Covers(passage.StartedAt, passage.EndedAt))
            return true;
        // Part of a load that has turned out longer than any crossing. Beyond the kept frames nothing can be refuted.
        var touched = passage.EndedAt >= span.From - FrameWindow.LongestJoinedGap && passage.StartedAt <= span.To + FrameWindow.LongestJoinedGap;
        return touched && passage.StartedAt < window.From + FrameWindow.Edge && window.From - window.Before <= FrameWindow.LongestJoinedGap;
    }

    private async Task AssignTagsAsync(StateChange change, PlatformPassages passages, List<TagChain> moved, DateTimeOffset? keptFrom)
    {
        TagChain? done = null;
        foreach (var seed in moved.OrderBy(seed => seed.From))
        {
            if (done is { } last && seed.From >= last.From && seed.To <= last.To)
                continue;
            var (chain, crossings, tags) = await ChainAsync(change, passages, seed);
            done = chain;
            var verdicts = TagAssignment.Assign([.. crossings.Select(passage => (passage.StartedAt, passage.EndedAt))], tags, _tagWindow);
            for (var i = 0; i < crossings.Count; i++)
            {
                // Where the tags are gone nothing new can be said of whose it was.
                if (keptFrom is null || crossings[i].StartedAt - _tagWindow > keptFrom)
                    passages.Put(PassageTag.Give(crossings[i], verdicts[i]));
            }
        }
    }

    private async Task<(TagChain Chain, List<Passage> Crossings, List<TagRead> Tags)> ChainAsync(
        StateChange change, PlatformPassages passages, TagChain seed)
    {
        for (var reach = TimeSpan.FromMinutes(1); ; reach *= 2)
        {
            var (from, to) = (seed.From - reach, seed.To + reach);
            var crossings = await passages.StartedInAsync(from - FrameWindow.LongestLoad, to);
            var tags = await change.TagsAsync(_platform.Id, from, to);
            var chain = TagChain.Around(seed, crossings.Select(passage => (passage.StartedAt, passage.EndedAt)), tags, _tagWindow);
            if (chain.From - _tagWindow < from || chain.To + _tagWindow >= to)
                continue;
            return (
                chain,
                [.. crossings.Where(passage => passage.StartedAt >= chain.From && passage.EndedAt <= chain.To)],
                [.. tags.Where(read => read.At >= chain.From && read.At <= chain.To)]);
        }
    }
}
