using System.Globalization;
using GaitWatch.Gait;
using GaitWatch.Simulator;

namespace GaitWatch.Benchmarks;

/// <summary>
/// Cows in a queue: each tag is read some seconds before its cow's first contact, often while the cow ahead is still on the plates,
/// sometimes twice. Is a crossing ever given to another cow? By the rule of the wire contract a cow whose own tag is missed takes one read
/// while she is under way, so a row in which one tag in fifty is missed shows how often that is the next cow's; her
/// weight has to tell then. Where no tag is read, and where the tag of the cow behind is read before she herself steps on, nobody may be named.
/// </summary>
internal static class TagQueue
{
    public static void Report(AccuracyOptions options)
    {
        var table = new FigureTable("tags", "crossings", "read with the cow ahead on the plates", "named rightly", "no tag", "two tags", "wrong cow");
        foreach (var source in WalkSource.OfEveryKind)
        {
            var lasting = Crossings(options, source);
            foreach (var (name, missed, crowded) in new[] { ("every tag read", 0.0, 0.0), ("one in fifty missed", 0.02, 0), ("none read", 1, 0), ("the cow behind read before she steps on, too", 0, 1) })
                table.Add([$"{source.Name} source, {name}", .. Count(options, lasting, missed, crowded).Select(number => number.ToString(CultureInfo.InvariantCulture))]);
        }

        table.Write();
    }

    /// <summary>How long each cow is on the plates, as measured.</summary>
    private static List<TimeSpan> Crossings(AccuracyOptions options, WalkSource source)
    {
        var analyser = WalkSource.Analyser(null);
        return
        [
            .. Enumerable.Range(0, options.Queue).Select(k => analyser.Analyse(WalkSource.Frames(source.Of(k % 2 == 0 ? CrossingKind.Steady : CrossingKind.Varied, options.Seed + k, null))).Crossings)
                .Where(found => found.Length == 1).Select(found => found[0].LastLift - found[0].FirstContact),
        ];
    }

    private static int[] Count(AccuracyOptions options, List<TimeSpan> lasting, double missed, double crowded)
    {
        var random = new SeededRandom(options.Seed, 77);
        var start = new DateTimeOffset(2026, 3, 2, 5, 0, 0, TimeSpan.Zero);
        var (crossings, reads, owners) = (new List<(DateTimeOffset, DateTimeOffset)>(), new List<TagRead>(), new List<Eid>());
        var overtaking = 0;
        foreach (var length in lasting)
        {
            // The cow ahead has just left the plates, or has been gone for a while.
            var before = crossings.Count == 0 ? start : crossings[^1].Item2;
            var contact = before + TimeSpan.FromSeconds(random.Chance(0.6) ? random.Uniform(0.5, 3) : random.Uniform(3, 40));
            var eid = TagOf(owners.Count);
            // The reader stands at the entry: its cow is there at most a few seconds before she steps on.
            if (!random.Chance(missed))
            {
                var at = contact - TimeSpan.FromSeconds(random.Uniform(0.2, 4));
                overtaking += at < before && crossings.Count > 0 ? 1 : 0;
                reads.Add(new(at, eid));
                if (random.Chance(0.2))
                    reads.Add(new(at + TimeSpan.FromSeconds(random.Uniform(0.05, 1.5)), eid));
                if (random.Chance(crowded))
                    reads.Add(new(contact - TimeSpan.FromSeconds(0.1), TagOf(owners.Count + 1)));
            }

            crossings.Add((contact, contact + length));
            owners.Add(eid);
        }

        var verdicts = TagAssignment.Assign(crossings, reads, new GaitOptions().TagWindow);
        int wrong = 0, named = 0, none = 0, two = 0;
        for (var k = 0; k < verdicts.Length; k++)
        {
            wrong += verdicts[k].Eid is { } eid && eid != owners[k] ? 1 : 0;
            named += verdicts[k].Eid == owners[k] ? 1 : 0;
            none += verdicts[k].Reason == QualityReason.NoTag ? 1 : 0;
            two += verdicts[k].Reason == QualityReason.TwoTags ? 1 : 0;
        }

        return [verdicts.Length, overtaking, named, none, two, wrong];
    }

    private static Eid TagOf(int cow) =>
        Eid.TryParse(string.Create(CultureInfo.InvariantCulture, $"982{cow + 1:000000000000}"), out var eid, out var fault) ? eid : throw new InvalidOperationException(fault);
}
