using System.Globalization;
using GaitWatch.Gait;
using GaitWatch.Simulator;

namespace GaitWatch.Benchmarks;

/// <summary>
/// Cows in a queue: each tag is read some seconds before its cow's first contact, often while the cow ahead is still on the plates,
/// sometimes twice. Is a crossing ever given to another cow? By the rule of the wire contract a cow whose own tag is missed takes one read
/// while she is under way, so a second row, in which one tag in fifty is missed, shows how often that is the next cow's; her
/// weight has to tell then.
/// </summary>
internal static class TagQueue
{
    public static void Report(AccuracyOptions options)
    {
        var table = new FigureTable("tags", "crossings", "named rightly", "no tag", "two tags", "wrong cow");
        foreach (var (name, missed) in new[] { ("every tag read", 0.0), ("one in fifty missed", 0.02) })
            table.Add([name, .. Count(options, missed).Select(number => number.ToString(CultureInfo.InvariantCulture))]);
        table.Write();
    }

    private static int[] Count(AccuracyOptions options, double missed)
    {
        var random = new SeededRandom(options.Seed, 77);
        var analyser = WalkSource.Analyser(null);
        var start = new DateTimeOffset(2026, 3, 2, 5, 0, 0, TimeSpan.Zero);
        var (crossings, reads, owners) = (new List<(DateTimeOffset, DateTimeOffset)>(), new List<TagRead>(), new List<Eid>());
        for (var k = 0; k < options.Queue; k++)
        {
            var source = WalkSource.OfEveryKind[random.Below(2)];
            var crossing = source.Of(random.Chance(0.5) ? CrossingKind.Steady : CrossingKind.Varied, options.Seed + k, null);
            var found = analyser.Analyse(WalkSource.Frames(crossing)).Crossings;
            if (found.Length != 1)
                continue;
            var length = found[0].LastLift - found[0].FirstContact;
            // The cow ahead has just left the plates, or has been gone for a while.
            var before = crossings.Count == 0 ? start : crossings[^1].Item2;
            var contact = before + TimeSpan.FromSeconds(random.Chance(0.6) ? random.Uniform(0.5, 3) : random.Uniform(3, 40));
            if (!Eid.TryParse(string.Create(CultureInfo.InvariantCulture, $"982{k + 1:000000000000}"), out var eid, out _))
                throw new InvalidOperationException("A simulated tag was not one.");
            // The reader stands at the entry: its cow is there at most a few seconds before she steps on.
            if (!random.Chance(missed))
            {
                var at = contact - TimeSpan.FromSeconds(random.Uniform(0.2, 4));
                reads.Add(new(at, eid));
                if (random.Chance(0.2))
                    reads.Add(new(at + TimeSpan.FromSeconds(random.Uniform(0.05, 1.5)), eid));
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

        return [verdicts.Length, named, none, two, wrong];
    }
}
