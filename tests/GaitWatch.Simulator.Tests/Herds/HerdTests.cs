namespace GaitWatch.Simulator.Tests;

public class HerdTests
{
    private static readonly DateTimeOffset s_now = new(2026, 3, 2, 10, 0, 0, TimeSpan.Zero);

    [Fact]
    public void The_same_seed_tells_the_same_story_twice_and_from_a_new_herd_another_seed_another()
    {
        var herd = new SimulatedHerd(HerdSpec.Barn(7, 30, 60));
        var first = herd.Events().Select(Told).ToArray();
        Assert.Equal(first, herd.Events().Select(Told).ToArray());
        Assert.Equal(first, new SimulatedHerd(HerdSpec.Barn(7, 30, 60)).Events().Select(Told).ToArray());
        Assert.NotEqual(first, new SimulatedHerd(HerdSpec.Barn(8, 30, 60)).Events().Select(Told).ToArray());

        static string Told(HerdEvent told) => told switch
        {
            FindingEvent finding => $"{finding.At:O} {finding.Cow} {finding.Finding with { Actions = [] }} {string.Join(' ', finding.Finding.Actions)}",
            _ => told.ToString(),
        };
    }

    [Fact]
    public void The_stream_is_in_order_of_arrival_and_nothing_arrives_before_it_happened()
    {
        DateTimeOffset last = default;
        foreach (var told in new SimulatedHerd(HerdSpec.Barn(3, 60, 120)).Events())
        {
            Assert.True(told.ArrivesAt >= last);
            Assert.True(told.ArrivesAt >= told.At);
            last = told.ArrivesAt;
        }
    }

    [Theory]
    [InlineData(2, 2)]
    [InlineData(3, 3)]
    public void A_cow_in_milk_crosses_after_every_milking(int seed, int milkings)
    {
        var spec = HerdSpec.Barn(seed, 50, 40) with { LostPassages = 0, DoubledReads = 0, CasesPer100CowsAndYear = 0, LateReads = 0 };
        var herd = new SimulatedHerd(spec);
        var counts = herd.Events().OfType<PassageEvent>().GroupBy(passage => (passage.TrueCow, Day: herd.DayOf(passage.At))).ToArray();
        Assert.All(counts, day => Assert.Equal(milkings, day.Count()));
        Assert.Equal(
            Enumerable.Range(0, 40).Sum(day => herd.Cows.Count(cow => cow.IsMilkedOn(day))),
            counts.Length);
    }

    [Fact]
    public void Cases_a_year_lie_where_herds_have_them_and_mostly_behind()
    {
        // 25 to 50 new cases per 100 cows and year (common practice, from memory). Ten herds together: about 300 cow-years of 40, less
        // those already lame; the Poisson spread of some 110 cases a cohort is within the bounds.
        double cases = 0, hind = 0, cowYears = 0;
        for (var seed = 0; seed < 10; seed++)
        {
            var spec = HerdSpec.Barn(seed, 100, 365);
            var herd = new SimulatedHerd(spec);
            cowYears += herd.Cows.Sum(cow => Enumerable.Range(0, spec.Days).Count(cow.IsPresentOn)) / 365.0;
            var onsets = herd.Episodes.GroupBy(episode => (episode.Cow, episode.OnsetAt)).ToArray();
            cases += onsets.Length;
            hind += onsets.Count(onset => !onset.First().Foot.IsFore());
        }

        Assert.InRange(100 * cases / cowYears, 25, 50);
        Assert.InRange(hind / cases, 0.8, 0.95);
    }

    [Fact]
    public void An_episode_grows_in_a_line_and_heals_by_halves()
    {
        var onset = s_now;
        var episode = new LamenessEpisode
        {
            Cow = "101", Foot = Foot.Rh, OnsetAt = onset, RampDays = 10, PlateauDrop = 0.2, Lesion = "SU", Healing = [new(onset.AddDays(20), 7, 0.25, true)],
        };
        Assert.Equal(0, episode.DropAt(onset.AddDays(-1)));
        Assert.Equal(0.1, episode.DropAt(onset.AddDays(5)), 1e-12);
        Assert.Equal(0.2, episode.DropAt(onset.AddDays(15)), 1e-12);
        // By hand: a quarter of 0.2 remains for good, 0.05; of the other 0.15 half is gone after 7 days, three quarters after 14.
        Assert.Equal(0.05 + 0.075, episode.DropAt(onset.AddDays(27)), 1e-12);
        Assert.Equal(0.05 + 0.0375, episode.DropAt(onset.AddDays(34)), 1e-12);
        Assert.Null(episode.HealedAt);
        var heals = episode with { Healing = [new(onset.AddDays(20), 7, 0, true)] };
        // 0.2 to 0.01 is a factor of 20: 7 log2(20) = 30.25 days.
        Assert.Equal(20 + 30.254, (heals.HealedAt!.Value - onset).TotalDays, 0.001);
        Assert.Equal(0.01, heals.DropAt(heals.HealedAt.Value), 1e-9);
    }

    [Fact]
    public void Drops_and_ramps_lie_in_their_ranges_and_some_never_heal()
    {
        var episodes = Enumerable.Range(0, 10).SelectMany(seed => new SimulatedHerd(HerdSpec.Barn(seed, 100, 365)).Episodes).ToArray();
        Assert.All(episodes, episode => Assert.InRange(episode.PlateauDrop, 0.035, 0.30));
        Assert.All(episodes, episode => Assert.InRange(episode.RampDays, 1, 26));
        Assert.Contains(episodes, episode => episode.HealedAt is null);
        Assert.Contains(episodes, episode => episode.HealedAt is not null);
        Assert.Contains(episodes, episode => episode.IsPaired);
        Assert.Contains(episodes, episode => episode.IsSecondary);
    }

    [Fact]
    public void Those_newly_lame_and_treated_heal_about_as_often_as_in_the_trial()
    {
        // Thomas H.J. et al. 2015: of all four groups 62 of 167 sound at 35 days; fresh cases with claw horn lesions. Here: those who heal
        // wholly and quickly among horn lesions treated within a fortnight. Binomial spread of the sample allows 10 points.
        var treated = Enumerable.Range(0, 30).SelectMany(seed => new SimulatedHerd(HerdSpec.Barn(seed, 100, 365)).Episodes)
            .Where(episode => episode.Lesion is "SU" or "WLA" or "WLF" && episode.TreatedAt - episode.OnsetAt < TimeSpan.FromDays(14)).ToArray();
        Assert.True(treated.Length > 100, $"{treated.Length} cases");
        var sound = treated.Count(episode => episode.Healing.First(start => start.IsTreatment) is { RemainingPart: 0, HalfLifeDays: < 10 });
        Assert.Equal(62.0 / 167, (double)sound / treated.Length, 0.1);
    }

    [Fact]
    public void Weights_are_those_of_dairy_cows()
    {
        // A mature dairy cow weighs about 544 to 726 kg (common practice). Heifers of first calving are lighter.
        var herd = new SimulatedHerd(HerdSpec.Barn(2, 200, 60));
        var mature = herd.Cows.Where(cow => cow.FirstParity >= 3).Select(cow => herd.StateAt(cow, herd.Spec.End.AddDays(-30)).WeightKg).Order().ToArray();
        Assert.InRange(mature[mature.Length / 2], 620, 720);
        Assert.InRange(mature.Average(kg => kg is > 544 and < 726 ? 1.0 : 0.0), 0.6, 1);
        var heifers = herd.Cows.Where(cow => cow.FirstParity == 1).Average(cow => cow.WeightKg);
        Assert.InRange(heifers, 550, 610);
    }

    [Fact]
    public void Milk_rests_mainly_on_the_hind_legs()
    {
        // Chapinal N. et al. 2009, J Dairy Sci 92:581-588.
        var herd = new SimulatedHerd(HerdSpec.Barn(2, 20, 60) with { CasesPer100CowsAndYear = 0 });
        foreach (var cow in herd.Cows)
        {
            var at = herd.Spec.End.AddDays(-30);
            var (empty, full) = (herd.StateAt(cow, at), herd.StateAt(cow, at, 20));
            Assert.Equal(20, full.WeightKg - empty.WeightKg, 1e-9);
            var onHind = full.WeightKg * (full.Shares.Lh + full.Shares.Rh) - empty.WeightKg * (empty.Shares.Lh + empty.Shares.Rh);
            Assert.InRange(onHind / 20, 0.6, 1);
        }
    }

    [Fact]
    public void A_calf_carried_rests_52_to_48_on_fore_and_hind_legs()
    {
        // Chapinal 2009: of the weight of the foetus about 52 % in front, 48 % behind.
        var shares = LoadShares.Of(0.55, 0.5, 0.48);
        var carrying = shares.Carrying(600, 45, CowBody.ForeOfCalf);
        Assert.Equal(0.52 * 45, 645 * (carrying.Lf + carrying.Rf) - 600 * 0.55, 1e-9);
        Assert.Equal(0.48 * 45, 645 * (carrying.Lh + carrying.Rh) - 600 * 0.45, 1e-9);
        Assert.Equal(1, carrying.Values().Sum(), 1e-12);
    }

    [Fact]
    public void Unrest_falls_by_30_percent_at_calving()
    {
        // Chapinal 2009: weight shifting between legs falls by about 30 % after calving.
        Assert.Equal(0.70, CowBody.CalfUnrest(null) / CowBody.CalfUnrest(0), 1e-9);
        Assert.Equal(1, CowBody.CalfUnrest(150));
    }

    [Fact]
    public void Milk_follows_woods_curve_with_its_peak_on_day_b_over_c()
    {
        // Wood 1967: y = a t^b exp(-c t) peaks at t = b / c = 0.2 / 0.0036 = 55.6 days.
        var peak = Enumerable.Range(1, 300).MaxBy(day => CowBody.MilkKgPerDay(40, day));
        Assert.InRange(peak, 55, 57);
        Assert.Equal(40, CowBody.MilkKgPerDay(40, peak), 0.05);
    }

    [Fact]
    public void Passages_of_one_day_are_alike()
    {
        // Analysis of variance over (cow, day) pairs of two passages: the intraclass correlation is the one set.
        var spec = HerdSpec.Plain(4, 100, 100) with { WithinDayCorrelation = 0.4 };
        var pairs = new SimulatedHerd(spec).Events().OfType<PassageEvent>().GroupBy(p => p.TrueCow)
            .SelectMany(cow =>
            {
                var values = cow.Select(p => (p.At.Date, Hind: Math.Log(p.LoadKg.Lh / p.LoadKg.Rh))).ToArray();
                var mean = values.Average(v => v.Hind);
                return values.GroupBy(v => v.Date).Select(day => day.Select(v => v.Hind - mean).ToArray()).Where(day => day.Length == 2);
            }).ToArray();
        var between = pairs.Average(pair => pair[0] * pair[1]);
        var total = pairs.Average(pair => 0.5 * (pair[0] * pair[0] + pair[1] * pair[1]));
        Assert.Equal(0.4, between / total, 0.03);
    }

    [Fact]
    public void A_plain_herd_scatters_about_its_true_shares()
    {
        var herd = new SimulatedHerd(HerdSpec.Plain(6, 40, 200));
        foreach (var cow in herd.Events().OfType<PassageEvent>().GroupBy(passage => passage.TrueCow))
        {
            var truth = cow.First().TrueShares;
            foreach (var foot in Feet.All)
                Assert.Equal(truth[foot], cow.Average(p => p.LoadKg[foot] / p.LoadKg.Values().Sum()), 0.004);
        }
    }

    [Fact]
    public void A_platform_fault_takes_load_from_one_plate_of_every_cow()
    {
        var spec = HerdSpec.Plain(3, 80, 20) with { PlatformFaults = [new(10, 2, false, 0.12)] };
        var herd = new SimulatedHerd(spec);
        var right = herd.Events().OfType<PassageEvent>().GroupBy(passage => herd.DayOf(passage.At))
            .ToDictionary(day => day.Key, day => day.Average(p => (p.LoadKg.Rf + p.LoadKg.Rh) / p.LoadKg.Values().Sum()));
        // By hand: right part 0.5 x 0.88 / (0.5 + 0.5 x 0.88) = 0.468.
        Assert.Equal(0.468, right[10], 0.004);
        Assert.Equal(0.468, right[11], 0.004);
        Assert.Equal(0.5, right[9], 0.004);
        Assert.Equal(0.5, right[12], 0.004);
    }

    [Fact]
    public void Reads_are_missed_swapped_late_and_doubled_as_often_as_set()
    {
        var spec = HerdSpec.Plain(9, 100, 200) with { MissedReads = 0.05, SwappedTags = 0.01, LateReads = 0.02, DoubledReads = 0.03 };
        var herd = new SimulatedHerd(spec);
        var passages = herd.Events().OfType<PassageEvent>().ToArray();
        var eids = herd.Cows.ToDictionary(cow => cow.Number, cow => cow.Eid);
        var distinct = passages.DistinctBy(passage => passage.Id).ToArray();
        Assert.Equal(0.03, (double)(passages.Length - distinct.Length) / distinct.Length, 0.004);
        Assert.Equal(0.05, distinct.Average(passage => passage.Eid is null ? 1.0 : 0), 0.005);
        Assert.Equal(0.02, distinct.Average(passage => passage.Eid is { } eid && eid != eids[passage.TrueCow] ? 1.0 : 0), 0.004);
        Assert.Equal(0.02, distinct.Average(passage => passage.ArrivesAt - passage.EndedAt > TimeSpan.FromSeconds(1) ? 1.0 : 0), 0.012);
    }

    [Fact]
    public void Ear_tags_are_valid_and_each_cows_own()
    {
        // ISO 11784: 15 digits; maker codes 900 to 998; national part up to 2^38 - 1 = 274877906943.
        var cows = new SimulatedHerd(HerdSpec.Barn(987654321, 300, 365)).Cows;
        Assert.All(cows, cow =>
        {
            Assert.Matches("^[0-9]{15}$", cow.Eid);
            Assert.InRange(int.Parse(cow.Eid[..3]), 900, 998);
            Assert.InRange(long.Parse(cow.Eid[3..]), 1, 274877906943);
        });
        Assert.Equal(cows.Count, cows.Select(cow => cow.Eid).Distinct().Count());
        Assert.Equal(cows.Count, cows.Select(cow => cow.Number).Distinct().Count());
    }

    [Fact]
    public void Dry_sold_unborn_and_hospitalised_cows_do_not_cross()
    {
        var herd = new SimulatedHerd(HerdSpec.Barn(4, 150, 300));
        var cows = herd.Cows.ToDictionary(cow => cow.Number);
        foreach (var passage in herd.Events().OfType<PassageEvent>())
        {
            var day = herd.DayOf(passage.At);
            Assert.True(cows[passage.TrueCow].IsMilkedOn(day) && !cows[passage.TrueCow].IsInHospitalOn(day));
        }

        Assert.Contains(herd.Cows, cow => cow.LeavesOn is not null);
        Assert.Contains(herd.Cows, cow => cow.EntersOn > 0);
        Assert.Contains(herd.Cows, cow => cow.Hospital.Length > 0);
        Assert.Contains(herd.Cows, cow => cow.DryOffs.Any(day => day is > 0 and < 300));
    }

    [Fact]
    public void The_register_tells_calvings_dry_offs_pens_and_departures_as_they_happen()
    {
        var herd = new SimulatedHerd(HerdSpec.Barn(4, 100, 300));
        var entries = herd.Events().OfType<RegisterEvent>().GroupBy(told => told.Entry.Cow).ToDictionary(cow => cow.Key, cow => cow.ToArray());
        Assert.Equal(herd.Cows.Count(cow => cow.EntersOn < 300), entries.Count);
        foreach (var cow in herd.Cows.Where(cow => entries.ContainsKey(cow.Number)))
        {
            var told = entries[cow.Number];
            Assert.All(told.Zip(told.Skip(1)), pair => Assert.NotEqual(pair.First.Entry, pair.Second.Entry));
            Assert.Equal(cow.LeavesOn is { } left && left < 300, told[^1].Entry.LeftOn is not null);
            foreach (var calving in cow.Calvings.Where(day => day > Math.Max(0, cow.EntersOn) && day < Math.Min(300, cow.LeavesOn ?? 300)))
                Assert.Contains(told, one => one.Entry.CalvedOn == herd.Spec.Start.AddDays(calving) && herd.DayOf(one.At) == calving && one.Entry.DriedOffOn is null);
            foreach (var dryOff in cow.DryOffs.Where(day => day > Math.Max(0, cow.EntersOn) && day < Math.Min(300, cow.LeavesOn ?? 300)))
                Assert.Contains(told, one => one.Entry.DriedOffOn == herd.Spec.Start.AddDays(dryOff) && herd.DayOf(one.At) == dryOff);
        }
    }

    [Fact]
    public void Findings_stand_on_sore_feet_and_speak_the_contracts_words()
    {
        string[] lesions = ["AC", "BU", "CC", "CD", "DD", "DS", "HFA", "HFH", "HFV", "HHE", "ID", "IH", "IP", "SC", "SHC", "SHD", "SU", "SW", "TN", "TS", "TU", "WLA", "WLF", "foreign-body", "other", "none"];
        string[] actions = ["trimmed", "loose-horn-removed", "foreign-body-removed", "corium-exposed", "dressing", "wrap", "wrap-off", "block", "block-off", "block-lost", "pain-relief", "antibiotic", "refer-to-vet"];
        var herd = new SimulatedHerd(HerdSpec.Barn(6, 200, 365));
        var findings = herd.Events().OfType<FindingEvent>().ToArray();
        Assert.Equal(findings.Length, findings.Select(told => told.Finding.Id).Distinct().Count());
        foreach (var (cow, finding) in findings.Select(told => (told.Cow, told.Finding)))
        {
            Assert.Contains(finding.Lesion, lesions);
            Assert.All(finding.Actions, action => Assert.Contains(action, actions));
            Assert.Equal(finding.Lesion is "DD" or "IP" or "none", finding.Claw is null);
            Assert.Equal(finding.Lesion == "DD", finding.MStage is not null);
            Assert.Equal(finding.Lesion is "DD" or "none", finding.Severity is null);
            // The block goes on the sound claw of the same foot.
            Assert.Equal(finding.Actions.Contains("block"), finding.BlockClaw is not null && finding.BlockClaw != finding.Claw);
            if (finding.Lesion != "none")
                Assert.Contains(herd.Episodes, episode => episode.Cow == cow && episode.Foot == finding.Foot && episode.Lesion == finding.Lesion);
        }
    }

    [Fact]
    public void What_is_put_on_a_foot_is_looked_at_and_taken_off_in_its_time()
    {
        var herd = new SimulatedHerd(HerdSpec.Barn(3, 60, 300));
        var byFoot = herd.Events().OfType<FindingEvent>().ToLookup(told => (told.Cow, told.Finding.Foot));
        var treated = byFoot.SelectMany(foot => foot).Where(told => told.Finding.Actions.Contains("block") && told.At < herd.Spec.End.AddDays(-40)).ToArray();
        Assert.True(treated.Length >= 5, $"{treated.Length} blocks: too few to prove something.");
        foreach (var block in treated.Where(told => herd.Cows.Single(cow => cow.Number == told.Cow).LeavesOn is null))
        {
            // Thomas H.J. et al. 2015, J Dairy Sci 98:4477-4486: re-examined at 5-11 days, the block off at 25-31, judged at 35.
            var after = byFoot[(block.Cow, block.Finding.Foot)].Where(told => told.At > block.At).Select(told => ((told.At - block.At).TotalDays, told.Finding)).ToArray();
            Assert.Contains(after, look => look.TotalDays is >= 5 and <= 11);
            Assert.Contains(after, look => look.TotalDays is >= 25 and <= 31 && look.Finding.Actions.Contains("block-off"));
            Assert.Contains(after, look => look.TotalDays is >= 35 and <= 42);
        }
    }

    [Fact]
    public void A_demonstration_ends_with_its_cases_whatever_the_seed_and_the_hour()
    {
        for (var seed = 0; seed < 100; seed++)
        {
            var now = s_now.AddHours(7 * seed);
            var herd = new SimulatedHerd(HerdSpec.Demo(seed, now));
            var open = herd.Episodes.Where(episode => episode.DropAt(now) > 0.04 && Crosses(episode.Cow)).ToArray();
            Assert.Contains(open, episode => episode.DropAt(now) > 0.25 && now - episode.OnsetAt < TimeSpan.FromDays(7));
            Assert.Equal(2, open.Count(episode => episode.IsPaired && now - episode.OnsetAt == TimeSpan.FromDays(16)));
            Assert.Contains(open, episode => episode.Foot.IsFore());
            Assert.Contains(open, episode => episode.TreatedAt is { } at && now - at < TimeSpan.FromDays(13) && episode.HealedAt is not null);
            Assert.Contains(open, episode => episode.TreatedAt is { } at && now - at > TimeSpan.FromDays(35) && episode.HealedAt is null && episode.DropAt(now) > 0.1);
            Assert.Contains(herd.Episodes, episode => episode.Healing is [{ HasBlock: true } start] && (int)(now - start.At).TotalDays is 81 or 82 && episode.DropAt(now) < 0.01 && Crosses(episode.Cow));
            Assert.Contains(herd.Episodes, episode => episode.DropAt(now) > 0.1 && !Crosses(episode.Cow));
            Assert.Contains(herd.VisitDates, date => date.DayNumber - DateOnly.FromDateTime(now.UtcDateTime).DayNumber is > 0 and < 7);

            bool Crosses(string number)
            {
                var cow = herd.Cows.Single(one => one.Number == number);
                var day = herd.DayOf(now);
                return cow.IsMilkedOn(day) && !cow.IsInHospitalOn(day);
            }
        }
    }

    [Fact]
    public void A_demonstration_tells_nothing_of_the_future()
    {
        var herd = new SimulatedHerd(HerdSpec.Demo(1, s_now));
        var last = herd.Events().Last();
        Assert.True(last.ArrivesAt < s_now);
        Assert.True(s_now - last.ArrivesAt < TimeSpan.FromHours(12));
        Assert.Equal(365, herd.DayOf(s_now));
    }
}
