using System.Globalization;
using System.Text;
using GaitWatch.Lameness.Tests.Simulated;

namespace GaitWatch.Lameness.Tests.Evaluation;

/// <summary>A flag as a trial needs it.</summary>
public sealed record Flag(string Cow, AlertPattern Pattern, GaitWatch.Gait.Leg Leg, double Day);

/// <summary>A trouble as a trial needs it.</summary>
/// <param name="Cow">The cow.</param>
/// <param name="Pattern">What is spared.</param>
/// <param name="Leg">The leg; of a pair either.</param>
/// <param name="OnsetDay">When it truly begins.</param>
/// <param name="Drop">Fraction of the leg's load given up when full; NaN: it explains flags, but is not scored.</param>
/// <param name="UntilDay">A flag until then is about it.</param>
public sealed record TrueTrouble(string Cow, AlertPattern Pattern, GaitWatch.Gait.Leg Leg, double OnsetDay, double Drop, double UntilDay)
{
    /// <summary>Whether a flag on a day is about it.</summary>
    public bool Explains(double day) => day >= OnsetDay && day < UntilDay;
}

/// <summary>How well flags find the troubles of a herd whose truth is known, and how often they are false.</summary>
public sealed class DetectionTrial
{
    /// <summary>A trouble not found in so many days counts as found after as many.</summary>
    public const double MissDays = 28;

    /// <summary>A herd's learning, which the budget leaves out (contract).</summary>
    public const double LearningDays = 35;

    private static readonly (double From, double To)[] _classes = [(0, 0.05), (0.05, 0.08), (0.08, 0.12), (0.12, 0.20), (0.20, 1)];

    private readonly List<(TrueTrouble Episode, double Delay, bool Found, bool RightLeg)> _found = [];

    private DetectionTrial()
    {
    }

    public double FalsePer100CowWeeks { get; private set; }

    public int FalseFlags { get; private set; }

    /// <summary>False flags of a cow that had one in the 30 days before: told apart, as the budget counts them (contract).</summary>
    public int Repeats { get; private set; }

    public double CowWeeks { get; private set; }

    public int Episodes => _found.Count;

    public double Sensitivity => _found.Average(f => f.Found ? 1.0 : 0);

    public double MeanDelay => _found.Average(f => f.Delay);

    public double MedianDelay => _found.Select(f => f.Delay).Order().ElementAt(_found.Count / 2);

    public double RightLeg => _found.Where(f => f.Found).Average(f => f.RightLeg ? 1.0 : 0);

    /// <summary>Mean delay of troubles with a drop in a range.</summary>
    public double MeanDelayOf(double from, double to) =>
        _found.Where(f => f.Episode.Drop >= from && f.Episode.Drop < to).Select(f => f.Delay).DefaultIfEmpty(double.NaN).Average();

    /// <summary>Part of the troubles with a drop in a range that was found in time.</summary>
    public double SensitivityOf(double from, double to) =>
        _found.Where(f => f.Episode.Drop >= from && f.Episode.Drop < to).Select(f => f.Found ? 1.0 : 0).DefaultIfEmpty(double.NaN).Average();

    /// <summary>Folds a herd's history and gives the flags raised.</summary>
    public static List<Flag> FlagsOf(SimulatedHerd herd, LamenessOptions options)
    {
        var fold = new HerdFold(options);
        var flags = new List<Flag>();
        foreach (var passage in herd.Passages)
        {
            foreach (var change in fold.Fold(passage).Changes)
            {
                if (change.Kind == AlertChangeKind.Raised)
                    flags.Add(new Flag(change.Alert.Cow, change.Alert.Pattern, change.Alert.Leg, SimulatedHerd.DayOf(change.At)));
            }
        }

        return flags;
    }

    public static DetectionTrial Of(SimulatedHerd herd, IReadOnlyList<Flag> flags)
    {
        var troubles = herd.Episodes.ConvertAll(e => new TrueTrouble(e.Cow, e.Pattern, e.Leg, e.OnsetDay, e.Drop, e.HealingDay + 40));
        var troubled = troubles.Sum(e => Math.Min(e.UntilDay, herd.Spec.Days) - e.OnsetDay);
        return Of(troubles, flags, ((herd.Spec.Cows * (herd.Spec.Days - LearningDays)) - troubled) / 7);
    }

    /// <summary>Scores flags.</summary>
    /// <param name="troubles">The truth.</param>
    /// <param name="flags">The flags.</param>
    /// <param name="soundCowWeeks">Weeks that sound cows crossed in after the learning days.</param>
    public static DetectionTrial Of(List<TrueTrouble> troubles, IReadOnlyList<Flag> flags, double soundCowWeeks)
    {
        var trial = new DetectionTrial();
        foreach (var trouble in troubles.Where(t => !double.IsNaN(t.Drop)))
        {
            var first = flags.Where(f => f.Cow == trouble.Cow && trouble.Explains(f.Day)).MinBy(f => f.Day);
            var found = first is not null && first.Day - trouble.OnsetDay < MissDays;
            var right = found && (trouble.Pattern == AlertPattern.OneLeg
                ? first!.Pattern == AlertPattern.OneLeg && first.Leg == trouble.Leg
                : first!.Pattern == trouble.Pattern);
            trial._found.Add((trouble, found ? first!.Day - trouble.OnsetDay : MissDays, found, right));
        }

        var isFalse = flags.Where(f => f.Day >= LearningDays && !troubles.Exists(e => e.Cow == f.Cow && e.Explains(f.Day))).ToList();
        trial.Repeats = isFalse.Count(f => isFalse.Exists(g => g.Cow == f.Cow && g.Day < f.Day && g.Day > f.Day - 30));
        trial.FalseFlags = isFalse.Count;
        trial.CowWeeks = soundCowWeeks;
        trial.FalsePer100CowWeeks = 100 * (trial.FalseFlags - trial.Repeats) / trial.CowWeeks;
        return trial;
    }

    public override string ToString()
    {
        var text = new StringBuilder();
        text.AppendLine(CultureInfo.InvariantCulture, $"{FalsePer100CowWeeks:0.00} false flags per 100 cows a week ({FalseFlags - Repeats} in {CowWeeks:0} cow-weeks, {Repeats} repeats apart)");
        if (Episodes == 0)
            return text.ToString();
        text.AppendLine(CultureInfo.InvariantCulture, $"{Episodes} troubles: {100 * Sensitivity:0.0} % found, delay mean {MeanDelay:0.00} d, median {MedianDelay:0.0} d, right leg {100 * RightLeg:0.0} %");
        foreach (var (from, to) in _classes)
        {
            text.AppendLine(CultureInfo.InvariantCulture, $"  drop {100 * from:0}-{100 * to:0} %: {_found.Count(f => f.Episode.Drop >= from && f.Episode.Drop < to)} troubles, {100 * SensitivityOf(from, to):0} % found, mean {MeanDelayOf(from, to):0.0} d");
        }

        return text.ToString();
    }
}
