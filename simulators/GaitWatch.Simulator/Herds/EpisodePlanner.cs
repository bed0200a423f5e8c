namespace GaitWatch.Simulator;

/// <summary>
/// Plans when each cow falls lame, on which leg, how badly; whether and when it is treated; how it heals. Chances of being sound
/// after treatment follow the trials: Thomas H.J. et al. 2015, J Dairy Sci 98:4477-4486 (newly lame: trim 11/45, block 14/39,
/// block and pain relief 23/41) and 2016, Vet Rec 178:116 (lame over two weeks: 15-16 %; 38 % lame on the opposite leg too).
/// </summary>
internal sealed class EpisodePlanner(HerdSpec spec)
{
    private const double SeenAsLame = 0.18;
    private readonly DateTimeOffset _start = new(spec.Start, TimeOnly.MinValue, TimeSpan.Zero);

    /// <summary>Days of the trimmer's visits. In a demonstration the next one is two days after the end.</summary>
    public IReadOnlyList<int> VisitDays { get; } = Visits(spec);

    /// <summary>The cow with her troubles, findings and days in the hospital pen.</summary>
    public SimulatedCow Plan(SimulatedCow cow, int index, IReadOnlyList<LamenessEpisode> forced)
    {
        var random = new SeededRandom(spec.Seed, 1_000_000 + index);
        var episodes = new List<LamenessEpisode>();
        var findings = new List<FindingEvent>();
        var hospital = new List<(int, int)>();
        // A forced case needs a cow that was sound for a good while before.
        var lastFree = forced.Count == 0 ? spec.Days : (int)(forced.Min(episode => episode.OnsetAt) - _start).TotalDays - 100;
        for (var day = Math.Max(0, cow.EntersOn); day < Math.Min(spec.Days, cow.LeavesOn ?? spec.Days); day++)
        {
            var drawn = random.Uniform();
            if (day >= lastFree || !cow.IsMilkedOn(day) || drawn >= Hazard(cow, day))
                continue;
            var at = _start.AddDays(day + random.Uniform());
            if (episodes.Any(episode => episode.HealedAt is not { } healed || healed > at.AddDays(-20)))
                continue;
            Begin(cow, random, at, episodes, findings, hospital);
        }

        if (forced.Count > 0 && episodes.Any(episode => episode.HealedAt is not { } healed || healed > forced.Min(one => one.OnsetAt)))
        {
            episodes.Clear();
            findings.Clear();
            hospital.Clear();
        }

        foreach (var episode in forced)
        {
            episodes.Add(episode);
            foreach (var start in episode.Healing)
                Note(cow, random, episode, start, findings);
        }

        hospital.AddRange(DemoCases.Hospital(spec, forced));
        if (spec.Treatments)
            RoutineTrims(cow, random, findings);
        return cow with
        {
            Episodes = [.. episodes.OrderBy(episode => episode.OnsetAt)],
            Findings = [.. findings.Where(finding => cow.IsPresentOn((int)(finding.At - _start).TotalDays)).OrderBy(finding => finding.At)],
            Hospital = [.. hospital],
        };
    }

    private static List<int> Visits(HerdSpec spec)
    {
        if (!spec.Treatments)
            return [];
        var first = spec.DemoCases ? spec.Days - 1 + 2 : spec.VisitEveryDays / 2;
        while (first - spec.VisitEveryDays > 0)
            first -= spec.VisitEveryDays;
        return [.. Enumerable.Range(0, 10_000).Select(i => first + i * spec.VisitEveryDays).TakeWhile(day => day < spec.Days + spec.VisitEveryDays)];
    }

    /// <summary>Chance of a new case on a day: half as high again in the first hundred days of lactation and in older cows (invented).</summary>
    private double Hazard(SimulatedCow cow, int day)
    {
        var early = cow.DaysInMilkOn(day) < 100 ? 1.4 : 0.85;
        var old = cow.FirstParity >= 3 ? 1.25 : 0.85;
        return spec.CasesPer100CowsAndYear / 100 / 365 * early * old;
    }

    private void Begin(
        SimulatedCow cow, SeededRandom random, DateTimeOffset at, List<LamenessEpisode> episodes, List<FindingEvent> findings, List<(int, int)> hospital)
    {
        var hind = random.Chance(spec.HindCases);
        var left = random.Chance(0.5);
        var foot = hind ? left ? Foot.Lh : Foot.Rh : left ? Foot.Lf : Foot.Rf;
        var both = hind && random.Chance(spec.BothHindCases);
        var episode = Draw(cow, random, at, foot, hind) with { IsPaired = both };
        var first = Treat(cow, random, episode, findings, hospital);
        episodes.Add(first);
        if (both)
        {
            var other = episode with { Foot = foot.Opposite(), PlateauDrop = episode.PlateauDrop * random.Uniform(0.7, 1.0) };
            episodes.Add(Treat(cow, random, other, findings, hospital));
        }
        else if (hind && first.TreatedAt is { } treated && treated - at > TimeSpan.FromDays(14) && random.Chance(0.38))
        {
            var second = Draw(cow, random, treated.AddDays(random.Uniform(-5, 25)), foot.Opposite(), hind) with { IsSecondary = true };
            episodes.Add(Treat(cow, random, second, findings, hospital));
        }
    }

    private static LamenessEpisode Draw(SimulatedCow cow, SeededRandom random, DateTimeOffset at, Foot foot, bool hind)
    {
        var lesion = Lesion.Draw(random, hind);
        return new()
        {
            Cow = cow.Number,
            Foot = foot,
            OnsetAt = at,
            RampDays = random.Uniform(lesion.RampLow, lesion.RampHigh),
            PlateauDrop = 0.05 + 0.25 * Math.Pow(random.Uniform(), 1.2),
            Lesion = lesion.Code,
        };
    }

    private LamenessEpisode Treat(SimulatedCow cow, SeededRandom random, LamenessEpisode episode, List<FindingEvent> findings, List<(int, int)> hospital)
    {
        var onset = (episode.OnsetAt - _start).TotalDays;
        var leaves = cow.LeavesOn ?? spec.Days;
        if (!spec.Treatments)
        {
            // Nobody treats: half heal by themselves, slowly.
            return random.Chance(0.5)
                ? episode with { Healing = [new(episode.OnsetAt.AddDays(episode.RampDays + random.Exponential(25)), random.Uniform(10, 25), 0, false)] }
                : episode;
        }

        // The farm sees a severe case for itself; the trimmer is shown the others as far as they show.
        double? seen = episode.PlateauDrop > SeenAsLame && random.Chance(0.6)
            ? onset + episode.RampDays * SeenAsLame / episode.PlateauDrop + random.Exponential(3)
            : null;
        var healsAlone = random.Chance(0.2) ? onset + episode.RampDays + random.Exponential(30) : double.PositiveInfinity;
        for (var round = 0; round < 3; round++)
        {
            var after = episode.Healing.IsEmpty ? onset : (episode.Healing[^1].At - _start).TotalDays + 20;
            double? at = round == 0 ? seen : null;
            foreach (var visit in VisitDays.Where(visit => visit > after))
            {
                if (at is { } already && already <= visit)
                    break;
                var shows = Math.Clamp((episode.DropAt(_start.AddDays(visit)) - 0.04) / 0.16, 0, 0.9);
                if (cow.IsPresentOn(visit) && random.Chance(shows))
                {
                    at = visit + random.Uniform(9.0 / 24, 14.0 / 24);
                    break;
                }
            }

            if (episode.Healing.IsEmpty && healsAlone < (at ?? leaves))
                return episode with { Healing = [new(_start.AddDays(healsAlone), random.Uniform(12, 30), 0, false)] };
            if (at is not { } day || day >= leaves)
                return episode;
            var start = Outcome(random, episode, _start.AddDays(day), day - onset);
            var drop = episode.DropAt(start.At);
            episode = episode with { Healing = episode.Healing.Add(start) };
            Note(cow, random, episode, start, findings);
            if (drop > 0.22 && random.Chance(0.4))
                hospital.Add(((int)day, (int)day + 5 + random.Below(6)));
            if (start.RemainingPart == 0)
                return episode;
        }

        return episode;
    }

    private static HealingStart Outcome(SeededRandom random, LamenessEpisode episode, DateTimeOffset at, double daysLame)
    {
        var lesion = Lesion.Of(episode.Lesion);
        var block = lesion.TakesBlock && random.Chance(0.75);
        var relief = block && random.Chance(0.5);
        var sound = daysLame > 14 ? 0.155 : !lesion.TakesBlock ? 0.5 : relief ? 23.0 / 41 : block ? 14.0 / 39 : 11.0 / 45;
        if (random.Chance(sound))
            return new(at, random.Uniform(4, 9), 0, true, block, relief);
        return random.Chance(0.55)
            ? new(at, random.Uniform(16, 40), 0, true, block, relief)
            : new(at, random.Uniform(5, 10), random.Uniform(0.35, 0.8), true, block, relief);
    }

    private static void Note(SimulatedCow cow, SeededRandom random, LamenessEpisode episode, HealingStart start, List<FindingEvent> findings)
    {
        if (!start.IsTreatment)
            return;
        var lesion = Lesion.Of(episode.Lesion);
        var at = Whole(start.At);
        var found = lesion.Find(random, Id(cow, at, episode.Foot), episode.Foot, episode.DropAt(start.At), start.HasBlock, start.HasPainRelief);
        findings.Add(new(at, cow.Number, found));
        // The farm's own work afterwards, in its time: the wrap off, the block looked at and off, the soft horn and the outcome looked at.
        if (found.Actions.Contains("wrap"))
            Later(3, "wrap-off");
        if (start.HasBlock)
        {
            Later(7, null);
            Later(25 + random.Below(5), "block-off");
        }
        else if (found.Actions.Contains("loose-horn-removed"))
        {
            Later(22, null);
        }

        if (!found.Actions.Contains("refer-to-vet"))
            Later(36, null);

        void Later(int days, string? action)
        {
            var when = at.AddDays(days);
            var look = found with
            {
                Id = Id(cow, when, episode.Foot), Actions = action is null ? [] : [action], BlockClaw = null, ForeignBodyMillimetres = null, By = "the farm",
            };
            // A foot that carries its weight again looks like it.
            findings.Add(new(when, cow.Number, action is null && episode.DropAt(when) < 0.02
                ? look with { Claw = null, Zone = null, Lesion = "none", Severity = null, MStage = null }
                : look));
        }
    }

    /// <summary>Trims of sound cows: between 60 and 100 days in milk and at drying off (common practice), at the next visit, all four feet.</summary>
    private void RoutineTrims(SimulatedCow cow, SeededRandom random, List<FindingEvent> findings)
    {
        foreach (var calving in cow.Calvings)
            TrimAt(VisitDays.FirstOrDefault(visit => visit >= calving + 60 && visit <= calving + 100, -1));
        foreach (var dryOff in cow.DryOffs)
            TrimAt(VisitDays.LastOrDefault(visit => visit <= dryOff && visit > dryOff - spec.VisitEveryDays, -1));

        void TrimAt(int visit)
        {
            if (visit < 0 || visit >= spec.Days || !cow.IsMilkedOn(visit))
                return;
            var at = Whole(_start.AddDays(visit + random.Uniform(9.0 / 24, 14.0 / 24)));
            if (findings.Any(finding => Math.Abs((finding.At - at).TotalDays) < 30))
                return;
            foreach (var foot in Feet.All)
                findings.Add(new(at, cow.Number, new(Id(cow, at, foot), foot, null, null, "none", null, null, ["trimmed"], null, null)));
        }
    }

    private static DateTimeOffset Whole(DateTimeOffset at) => new(at.Ticks - at.Ticks % TimeSpan.TicksPerSecond, TimeSpan.Zero);

    private static string Id(SimulatedCow cow, DateTimeOffset at, Foot foot) =>
        FormattableString.Invariant($"f-{cow.Number}-{foot.Word()}-{at:yyyyMMddHHmmss}");
}
