using System.Globalization;

namespace GaitWatch.Benchmarks;

/// <summary>
/// The detection report: GaitWatch on simulated herds beside an oracle that knows the cow but not the leg, a herd-wide threshold on the load ratio, and a rolling
/// score per cow, each tuned to the rate of false flags that GaitWatch measured on the same herds.
/// </summary>
internal static class DetectionBenchmark
{
    private const double Slack = 1e-9;
    private static readonly (double From, double To)[] _drops = [(0.05, 0.08), (0.08, 0.12), (0.12, 0.20), (0.20, 1)];
    private static readonly (double From, double To)[] _ramps = [(0, 5), (5, 12), (12, 100)];

    public static Task RunAsync(string[] args)
    {
        var asked = DetectionArguments.Read(args);
        foreach (var kind in asked.Herds)
        {
            foreach (var budget in asked.Budgets)
                Report(asked, kind, budget);
        }

        return Task.CompletedTask;
    }

    private static void Report(DetectionArguments asked, string kind, double budget)
    {
        var herds = Tuning.AllOf(asked.Seeds.Length, i =>
        {
            var (history, inputs) = asked.Draw(kind, asked.Seeds[i]);
            var (flags, soundCrossingsFlagged) = GaitWatchDetector.Run(history, inputs, budget);
            return (History: history, Flags: flags, Flagged: soundCrossingsFlagged);
        });
        var histories = herds.Select(h => h.History).ToArray();
        var ours = new DetectionScore(histories, [.. herds.Select(h => h.Flags)]);
        var rate = ours.FalsePer100CowWeeks;
        DetectionScore? oracle = null;
        if (DetectionArguments.HasOracle(kind))
        {
            var oracles = Tuning.AllOf(histories.Length, i => new Oracle(histories[i]));
            oracle = Tuning.At(histories, (h, limit) => oracles[h].Run(limit), 1, 14, rate);
        }

        var ratio = Tuning.At(histories, (h, limit) => LoadRatioRule.Run(histories[h], limit), 0.02, 0.6, rate);
        var score = Tuning.At(histories, (h, limit) => RollingScoreRule.Run(histories[h], limit), 1, 25, rate);

        Say($"{kind}: {histories.Length} herds (seeds {string.Join(", ", asked.Seeds)}), {histories[0].Spec.Cows} cows, {asked.Days} days, {ours.Outcomes.Count} troubles judged; budget {budget:0.##} false flags a week per 100 cows");
        Console.WriteLine();
        DetectionScore[] all = oracle is null ? [ours, ratio, score] : [ours, oracle, ratio, score];
        var table = new FigureTable(oracle is null ? ["", "GaitWatch", "load ratio", "rolling score"] : ["", "GaitWatch", "oracle", "load ratio", "rolling score"]);
        Row("false flags a week per 100 cows", s => $"{s.FalsePer100CowWeeks:0.00}");
        Row("  (count; repeats apart, on sound and on lame cows)", s => $"{s.FalseFlags}; {s.Repeats}, {s.RepeatsOnLame}");
        Row("found within 28 days, %", s => $"{100 * DetectionScore.Found(s.Outcomes):0.0}");
        Row("  treated by the farm before any flag, left out", s => $"{s.Outcomes.Count(o => o.IsTreatedFirst)}");
        Row("days from onset, mean (a miss is 28)", s => $"{DetectionScore.MeanDelay(s.Outcomes):0.00}");
        Row("days from onset, median", s => $"{DetectionScore.Median(s.Outcomes.Select(o => o.Delay)):0.0}");
        if (oracle is not null)
            Row("mean over the oracle's", s => $"{DetectionScore.MeanDelay(s.Outcomes) / DetectionScore.MeanDelay(oracle.Outcomes):0.00}");
        Row("right leg, %", s => $"{100 * s.RightLeg:0.0}");
        foreach (var (from, to) in _drops)
            Class($"drop {100 * from:0}-{100 * to:0} %", o => !o.Trouble.IsPaired && o.Trouble.PlateauDrop >= from - Slack && o.Trouble.PlateauDrop < to);
        Class("drop over 12 %", o => !o.Trouble.IsPaired && o.Trouble.PlateauDrop >= 0.12);
        Class("both hind", o => o.Trouble.IsPaired);
        foreach (var (from, to) in _ramps)
            Class($"ramp of {from:0}-{to:0} days", o => o.Trouble.RampDays >= from && o.Trouble.RampDays < to);
        table.Write();
        Console.WriteLine();
        Say($"measured over asked: {rate / budget:0.00} (by herd {string.Join(" ", histories.Select((h, i) => (new DetectionScore([h], [herds[i].Flags]).FalsePer100CowWeeks / budget).ToString("0.0", CultureInfo.InvariantCulture)))})");
        Say($"onset error, median: {ours.OnsetError:0.0} days; its 90 % interval holds the onset in {100 * ours.OnsetCovered:0} %, median width {ours.OnsetWidth:0.0} days; drop error, median: {ours.DropError:0.0} points");
        Say($"flags in sudden platform faults: {ours.FaultFlags}, by chance {ours.FaultFlagsByChance(histories):0.0}");
        Say($"opposite leg flagged while healing: {ours.OppositeWhileHealing}, {100.0 * ours.OppositeWhileHealing / histories.Sum(h => h.Troubles.Count):0.0} per 100 episodes; false flags on cows lame on another leg or lately healed: {ours.OnLame}");
        Say($"false flags by cause nearest at hand: {FalseFlagCauses.Of(ours)}");
        PerMeasurement(ours, herds.Sum(h => h.Flagged));
        Calibration(ours, kind, asked.Picture);
        Console.WriteLine();

        void Row(string name, Func<DetectionScore, FormattableString> of) =>
            table.Add([name, .. all.Select(s => of(s).ToString(CultureInfo.InvariantCulture))]);

        void Class(string name, Func<Outcome, bool> of) => Row(
            $"{name} ({ours.Outcomes.Count(of)}): found %; mean days",
            s => $"{100 * DetectionScore.Found(s.Outcomes.Where(of)):0}; {DetectionScore.MeanDelay(s.Outcomes.Where(of)):0.0}");
    }

    /// <summary>
    /// Beside Pastell M.E., Kujala M. 2007, J Dairy Sci 90:2283-2292 (four balances; all cases found, false alarms at 1.1 % of measurements): the smallest drop from which on all troubles
    /// were found, and false alarms per measurement both ways one may count them.
    /// </summary>
    private static void PerMeasurement(DetectionScore ours, long flagged)
    {
        var missed = ours.Outcomes.Where(o => !o.IsFound && !o.IsTreatedFirst).Select(o => o.Trouble.PlateauDrop).DefaultIfEmpty(0).Max();
        var above = ours.Outcomes.Count(o => o.Trouble.PlateauDrop > missed);
        Say($"all {above} troubles with a drop above {100 * missed:0.0} % were found; false flags raised at {100.0 * ours.FalseFlags / ours.SoundCrossings:0.000} % of sound cows' measurements, an alert open at {100.0 * flagged / ours.SoundCrossings:0.00} %");
    }

    private static void Calibration(DetectionScore ours, string kind, string? picture)
    {
        var bins = ReliabilityDiagram.Of(ours.LegCalls);
        if (bins.Count == 0)
            return;
        Say($"leg probabilities, stated -> came true (count): {string.Join(", ", bins.Select(b => string.Create(CultureInfo.InvariantCulture, $"{b.Stated:0.00} -> {b.Came:0.00} ({b.Count})")))}; mean distance {ReliabilityDiagram.Error(bins):0.000}");
        var named = ours.NamedLegCalls.ToArray();
        Say($"the leg named: stated {named.Average(c => c.Probability):0.000} on average, came true {named.Average(c => c.IsSore ? 1.0 : 0):0.000}");
        if (picture is null)
            return;
        var file = Path.Combine(Path.GetDirectoryName(picture) ?? "", $"{Path.GetFileNameWithoutExtension(picture)}-{kind}.png");
        ReliabilityDiagram.Write(bins, $"Leg probabilities of first flags, {kind}", file);
        Console.WriteLine($"reliability diagram written to {file}");
    }

    private static void Say(FormattableString text) => Console.WriteLine(text.ToString(CultureInfo.InvariantCulture));
}
