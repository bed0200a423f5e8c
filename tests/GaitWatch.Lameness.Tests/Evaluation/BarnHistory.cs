using System.Globalization;
using GaitWatch.Gait;
using GaitWatch.Simulator;

namespace GaitWatch.Lameness.Tests.Evaluation;

/// <summary>
/// A simulated barn's history (GaitWatch.Simulator, which knows nothing of detection) as the fold takes it: in event time, passages under the register's
/// names, calvings, dry-offs, departures and treatments as events.
/// </summary>
public sealed class BarnHistory
{
    private BarnHistory(List<HerdInput> inputs, List<TrueTrouble> troubles, double soundCowWeeks) =>
        (Inputs, Troubles, SoundCowWeeks) = (inputs, troubles, soundCowWeeks);

    public List<HerdInput> Inputs { get; }

    public List<TrueTrouble> Troubles { get; }

    public double SoundCowWeeks { get; }

    public static BarnHistory Of(HerdSpec spec)
    {
        var herd = new SimulatedHerd(spec);
        var start = new DateTimeOffset(spec.Start, TimeOnly.MinValue, TimeSpan.Zero);
        var cowByEid = herd.Cows.ToDictionary(c => c.Eid, c => c.Number);
        var inputs = new List<HerdInput>();
        var seen = new HashSet<string>();
        var register = new Dictionary<string, RegisterEntry>();
        foreach (var told in herd.Events())
        {
            switch (told)
            {
                case PassageEvent { Eid: { } eid } p when seen.Add(p.Id):
                    _ = Eid.TryParse(eid, out var tag, out _);
                    var load = new PerLeg<double>(p.LoadKg.Lf, p.LoadKg.Rf, p.LoadKg.Lh, p.LoadKg.Rh);
                    var passage = new DevicePassage(p.Id, tag, p.At, p.EndedAt, load).ToPassage(spec.Platform, new GaitOptions());
                    if (passage.IsAccepted)
                        inputs.Add(new PassageInput(cowByEid[eid], passage));
                    break;
                case RegisterEvent r:
                    var before = register.GetValueOrDefault(r.Entry.Cow);
                    register[r.Entry.Cow] = r.Entry;
                    if (before is not null && r.Entry.CalvedOn != before.CalvedOn)
                        Know(new Calved(r.Entry.Cow, r.At));
                    if (before is not null && r.Entry.DriedOffOn is not null && before.DriedOffOn is null)
                        Know(new DriedOff(r.Entry.Cow, r.At));
                    if (r.Entry.LeftOn is not null)
                        Know(new LeftHerd(r.Entry.Cow, r.At));
                    break;
                case FindingEvent f:
                    Know(new FootTreated(
                        f.Cow, f.At, (Leg)(int)f.Finding.Foot, f.Finding.Actions.Contains("block"), f.Finding.Actions.Contains("block-off")));
                    break;
            }
        }

        inputs.Sort(HerdInput.Order);
        return new BarnHistory(inputs, Truth(herd, inputs, start), Weeks(herd, inputs, start));

        void Know(CowEvent known) => inputs.Add(new CowEventInput(known, string.Create(CultureInfo.InvariantCulture, $"e{inputs.Count:0000000}")));
    }

    /// <summary>Day of an instant from the history's first.</summary>
    public static double DayOf(HerdSpec spec, DateTimeOffset at) => (at - new DateTimeOffset(spec.Start, TimeOnly.MinValue, TimeSpan.Zero)).TotalDays;

    /// <summary>Folds it and gives the flags raised.</summary>
    public List<Flag> Flags(HerdSpec spec, LamenessOptions options)
    {
        var fold = new HerdFold(options);
        var flags = new List<Flag>();
        foreach (var input in Inputs)
        {
            foreach (var change in fold.Fold(input).Changes)
            {
                if (change.Kind == AlertChangeKind.Raised)
                    flags.Add(new Flag(change.Alert.Cow, change.Alert.Pattern, change.Alert.Leg, DayOf(spec, change.At)));
            }
        }

        return flags;
    }

    /// <summary>The troubles that can be judged: begun after the learning days, in a cow that crosses until four weeks later.</summary>
    private static List<TrueTrouble> Truth(SimulatedHerd herd, List<HerdInput> inputs, DateTimeOffset start)
    {
        var crossings = inputs.OfType<PassageInput>().GroupBy(p => p.Cow).ToDictionary(g => g.Key, g => g.Select(p => (p.At - start).TotalDays).ToList());
        var troubles = new List<TrueTrouble>();
        foreach (var e in herd.Episodes)
        {
            var onset = (e.OnsetAt - start).TotalDays;
            if (e.IsPaired && e.Foot == Foot.Rh && herd.Episodes.Any(o => o.Cow == e.Cow && o.OnsetAt == e.OnsetAt && o.Foot == Foot.Lh))
                continue;
            var until = e.HealedAt is { } healed ? (healed - start).TotalDays + 14 : herd.Spec.Days + 1;
            troubles.Add(new TrueTrouble(
                e.Cow, e.IsPaired ? AlertPattern.BothHind : AlertPattern.OneLeg, (Leg)(int)e.Foot, onset, e.PlateauDrop, until));
        }

        return [.. troubles.Select(t => CanBeJudged(t) ? t : t with { Drop = double.NaN })];

        bool CanBeJudged(TrueTrouble t) =>
            t.OnsetDay > DetectionTrial.LearningDays && t.OnsetDay < herd.Spec.Days - DetectionTrial.MissDays
            && crossings.TryGetValue(t.Cow, out var days) && days.Exists(d => d < t.OnsetDay - 21)
            && days.Count(d => d > t.OnsetDay && d < t.OnsetDay + 28) >= 20
            && !troubles.Exists(o => o != t && o.Cow == t.Cow && o.OnsetDay < t.OnsetDay && o.UntilDay > t.OnsetDay);
    }

    private static double Weeks(SimulatedHerd herd, List<HerdInput> inputs, DateTimeOffset start)
    {
        var sound = new HashSet<(string, int)>();
        var episodes = herd.Episodes.ToLookup(e => e.Cow);
        foreach (var input in inputs.OfType<PassageInput>())
        {
            var day = (input.At - start).TotalDays;
            if (day >= DetectionTrial.LearningDays && !episodes[input.Cow].Any(e => input.At > e.OnsetAt && (e.HealedAt is not { } healed || input.At < healed.AddDays(14))))
                sound.Add((input.Cow, (int)(day / 7)));
        }

        return sound.Count;
    }
}
