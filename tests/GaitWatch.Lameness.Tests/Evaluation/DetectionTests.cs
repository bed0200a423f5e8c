using GaitWatch.Lameness.Tests.Simulated;
using Xunit.Abstractions;

namespace GaitWatch.Lameness.Tests.Evaluation;

/// <summary>How well detection does on simulated herds; thresholds are what was measured, with a margin. Invented herds: they compare, they do not prove.</summary>
public sealed class DetectionTests(ITestOutputHelper output)
{
    [Fact]
    public void Sound_herds_spend_the_budget_they_were_given()
    {
        var (flags, weeks) = (0, 0.0);
        foreach (var seed in new[] { 1, 2 })
        {
            var trial = Run(new HerdSpec { Cows = 220, Days = 180, Seed = seed, EpisodesPer100CowYears = 0 });
            flags += trial.FalseFlags - trial.Repeats;
            weeks += trial.CowWeeks;
        }

        Assert.InRange(100 * flags / weeks, 0.6, 1.6);
    }

    [Fact]
    public void The_dial_means_what_it_says()
    {
        var herd = new SimulatedHerd(new HerdSpec { Cows = 150, Days = 170, Seed = 8, EpisodesPer100CowYears = 0 });
        double Rate(double budget)
        {
            var trial = DetectionTrial.Of(herd, DetectionTrial.FlagsOf(herd, new LamenessOptions { FalseAlertsPer100CowsPerWeek = budget }));
            output.WriteLine($"asked {budget}: {trial}");
            return trial.FalsePer100CowWeeks;
        }

        Assert.InRange(Rate(4), 2.6, 5.4);
        Assert.InRange(Rate(0.25), 0, 0.6);
    }

    [Fact]
    public void Barns_of_the_simulator_keep_the_budget_and_their_troubles_are_found()
    {
        var spec = GaitWatch.Simulator.HerdSpec.Barn(3, 120, 200) with { CasesPer100CowsAndYear = 80, Treatments = false };
        var barn = BarnHistory.Of(spec);
        var trial = DetectionTrial.Of(barn.Troubles, barn.Flags(spec, new LamenessOptions()), barn.SoundCowWeeks);
        output.WriteLine(trial.ToString());
        Assert.InRange(trial.FalsePer100CowWeeks, 0.4, 2.0);
        Assert.True(trial.Sensitivity > 0.8);
        Assert.True(trial.MeanDelay < 11);
        Assert.True(trial.RightLeg > 0.85);
    }

    /// <summary>Forty cows, half the reads missing: too few to tell the herd's own noise well, so the budget is kept less closely.</summary>
    [Fact]
    public void Small_herds_with_half_the_reads_missing_stay_near_the_budget()
    {
        var (flags, weeks) = (0, 0.0);
        foreach (var seed in new[] { 2, 3, 4, 5, 6, 7 })
        {
            var spec = GaitWatch.Simulator.HerdSpec.Hard(seed) with { CasesPer100CowsAndYear = 0, Treatments = false };
            var barn = BarnHistory.Of(spec);
            var trial = DetectionTrial.Of(barn.Troubles, barn.Flags(spec, new LamenessOptions()), barn.SoundCowWeeks);
            flags += trial.FalseFlags - trial.Repeats;
            weeks += trial.CowWeeks;
        }

        output.WriteLine($"{100 * flags / weeks:0.00} false flags per 100 cows a week ({flags} in {weeks:0} cow-weeks)");
        Assert.InRange(100 * flags / weeks, 0.5, 2.2);
    }

    [Fact]
    public void Detection_is_near_an_oracle_that_knows_the_cow_but_not_the_leg()
    {
        var spec = new HerdSpec { Cows = 200, Days = 170, Seed = 1, EpisodesPer100CowYears = 80 };
        var herd = new SimulatedHerd(spec);
        var limit = Oracle.LimitFor(spec with { Seed = 101, Cows = 150, Days = 120 }, 1);
        var oracle = DetectionTrial.Of(herd, Oracle.FlagsOf(herd, limit));
        var ours = DetectionTrial.Of(herd, DetectionTrial.FlagsOf(herd, new LamenessOptions()));
        output.WriteLine($"oracle, limit {limit:0.00}: {oracle}ours: {ours}");
        Assert.True(ours.MeanDelay < 1.4 * oracle.MeanDelay);
    }

    [Fact]
    public void Troubles_are_found_early_and_on_the_right_leg()
    {
        var trial = Run(new HerdSpec { Cows = 220, Days = 180, Seed = 1, EpisodesPer100CowYears = 80 });
        Assert.True(trial.Sensitivity > 0.9);
        Assert.True(trial.RightLeg > 0.9);
        Assert.True(trial.MeanDelay < 7);
        Assert.True(trial.SensitivityOf(0.12, 1) > 0.93);
        Assert.True(trial.MeanDelayOf(0.2, 1) < 4);
    }

    [Fact]
    public void A_lying_platform_flags_no_cows()
    {
        var quiet = new HerdSpec { Cows = 200, Days = 70, Seed = 4, EpisodesPer100CowYears = 0 };
        var sound = DetectionTrial.FlagsOf(new SimulatedHerd(quiet), new LamenessOptions());
        var faulty = DetectionTrial.FlagsOf(new SimulatedHerd(quiet with { FaultDays = [50] }), new LamenessOptions());
        var (before, during) = (sound.Count(f => f.Day is >= 50 and < 54), faulty.Count(f => f.Day is >= 50 and < 54));
        output.WriteLine($"flags in the days of the fault: {during}, without it {before}");
        Assert.True(during <= before + 3);
    }

    [Fact]
    public void A_lying_platform_is_told()
    {
        var herd = new SimulatedHerd(new HerdSpec { Cows = 60, Days = 52, Seed = 4, EpisodesPer100CowYears = 0, FaultDays = [50] });
        var (_, _, before) = Histories.Fold(herd.Passages.Where(p => p.At < Histories.At(50)));
        Assert.False(Assert.Single(before.Shifts).IsTrouble);
        var (_, assessments, after) = Histories.Fold(herd.Passages);
        var shift = Assert.Single(after.Shifts);
        Assert.True(shift.IsTrouble);
        Assert.InRange(shift.Movement.Hind, -0.16, -0.08);
        Assert.Contains("load cell", shift.Explanation, StringComparison.Ordinal);
        Assert.Contains(assessments, a => a.At > Histories.At(50) && a.CommonMovement!.Value.Hind < -0.08);
    }

    [Fact]
    public void A_drifting_platform_neither_hides_nor_makes_lameness()
    {
        var spec = new HerdSpec { Cows = 150, Days = 150, Seed = 6, EpisodesPer100CowYears = 80, PlatformDriftPerDay = 0.002 };
        var drifting = Run(spec);
        var steady = Run(spec with { PlatformDriftPerDay = 0 });
        Assert.True(drifting.MeanDelay < steady.MeanDelay + 1.5);
        Assert.True(drifting.FalseFlags <= (1.5 * steady.FalseFlags) + 5);
    }

    private DetectionTrial Run(HerdSpec spec)
    {
        var herd = new SimulatedHerd(spec);
        var trial = DetectionTrial.Of(herd, DetectionTrial.FlagsOf(herd, new LamenessOptions()));
        output.WriteLine(trial.ToString());
        return trial;
    }
}
