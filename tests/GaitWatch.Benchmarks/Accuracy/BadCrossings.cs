using System.Globalization;
using GaitWatch.Gait;
using GaitWatch.Simulator;

namespace GaitWatch.Benchmarks;

/// <summary>What is not one cow walking over: is it refused, and by its right name?</summary>
internal static class BadCrossings
{
    public static void Report(AccuracyOptions options)
    {
        var analyser = WalkSource.Analyser(null);
        var table = new FigureTable("kind", "crossings", "accepted", "right reason first", "right reason among them");
        int all = 0, allAccepted = 0, allFirst = 0;
        foreach (var source in WalkSource.OfEveryKind)
        {
            foreach (var kind in CrossingKinds.Bad)
            {
                int accepted = 0, first = 0, among = 0;
                for (var seed = options.Seed; seed < options.Seed + options.Bad; seed++)
                {
                    var found = analyser.Analyse(WalkSource.Frames(source.Of(kind, seed, null))).Crossings;
                    accepted += found.Any(crossing => crossing.Reasons.IsEmpty) ? 1 : 0;
                    first += found.Length > 0 && found[0].Reasons is [var reason, ..] && reason.WireName() == kind.Reason() ? 1 : 0;
                    among += found.Any(crossing => crossing.Reasons.Any(each => each.WireName() == kind.Reason())) ? 1 : 0;
                }

                (all, allAccepted, allFirst) = (all + options.Bad, allAccepted + accepted, allFirst + first);
                table.Add($"{source.Name} source, {kind.Reason()} ({kind})", Text(options.Bad), Text(accepted), Part(first, options.Bad), Part(among, options.Bad));
            }
        }

        table.Add("all", Text(all), Text(allAccepted), Part(allFirst, all), "");
        table.Write();
    }

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);

    private static string Part(int count, int of) => string.Create(CultureInfo.InvariantCulture, $"{100.0 * count / Math.Max(1, of):0.0} %");
}
