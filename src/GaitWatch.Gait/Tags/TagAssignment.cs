using System.Collections.Immutable;

namespace GaitWatch.Gait;

/// <summary>Tells whose crossing each was, by the rule of the wire contract.</summary>
public static class TagAssignment
{
    /// <summary>
    /// A crossing has the tag waiting at first contact (read within the window before, not used by a crossing since); two
    /// waiting: <see cref="QualityReason.TwoTags"/>. With none waiting, it has the first tag read while it is under way. Any
    /// further tag read under way waits for the next crossing. The same tag again, waiting or under way, is the same read.
    /// </summary>
    /// <param name="crossings">First contact and last lift of each crossing, in order of first contact.</param>
    /// <param name="tags">The reads, in any order.</param>
    /// <param name="window">How long a read waits.</param>
    /// <returns>One verdict a crossing.</returns>
    public static ImmutableArray<TagVerdict> Assign(
        IReadOnlyList<(DateTimeOffset FirstContact, DateTimeOffset LastLift)> crossings, IReadOnlyList<TagRead> tags, TimeSpan window)
    {
        var reads = tags.OrderBy(read => read.At).ThenBy(read => read.Eid).ToArray();
        var usedUntil = new Dictionary<Eid, DateTimeOffset>();
        var verdicts = ImmutableArray.CreateBuilder<TagVerdict>(crossings.Count);
        foreach (var (firstContact, lastLift) in crossings)
        {
            var verdict = VerdictOf(firstContact, lastLift, reads, window, usedUntil);
            if (verdict.Eid is { } eid)
                usedUntil[eid] = lastLift;
            verdicts.Add(verdict);
        }

        return verdicts.MoveToImmutable();
    }

    private static TagVerdict VerdictOf(
        DateTimeOffset firstContact, DateTimeOffset lastLift, TagRead[] reads, TimeSpan window, Dictionary<Eid, DateTimeOffset> usedUntil)
    {
        Eid? waiting = null;
        for (var k = FirstAtOrAfter(reads, firstContact, window); k < reads.Length; k++)
        {
            var (at, eid) = reads[k];
            if (at > lastLift)
                break;
            if (at > firstContact)
            {
                // Nothing was waiting, so the first read under way names her.
                if (waiting is null)
                    return new TagVerdict(eid, null);
                break;
            }

            if (eid == waiting || (usedUntil.TryGetValue(eid, out var until) && at <= until))
                continue;
            if (waiting is not null)
                return new TagVerdict(null, QualityReason.TwoTags);
            waiting = eid;
        }

        return waiting is null ? new TagVerdict(null, QualityReason.NoTag) : new TagVerdict(waiting, null);
    }

    private static int FirstAtOrAfter(TagRead[] reads, DateTimeOffset firstContact, TimeSpan window)
    {
        var low = 0;
        var high = reads.Length;
        while (low < high)
        {
            var middle = (low + high) / 2;
            if (firstContact - reads[middle].At > window)
                low = middle + 1;
            else
                high = middle;
        }

        return low;
    }
}
