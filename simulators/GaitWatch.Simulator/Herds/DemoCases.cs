namespace GaitWatch.Simulator;

/// <summary>
/// The cases with which a demonstration ends: each a stage of the road from the first days of a sore foot to a sound one. Days count
/// back from the end.
/// </summary>
internal static class DemoCases
{
    private sealed record Case(string Lesion, Foot Foot, double OnsetDaysAgo, double RampDays, double Drop, double TreatedDaysAgo = 0, double HalfLife = 0, double Remaining = 0, bool Paired = false, bool InHospital = false);

    private static readonly Case[][] s_cows =
    [
        // Severe and quick: a stone near the toe. The farm has to act today.
        [new("foreign-body", Foot.Rh, 5, 2, 0.30)],
        // Both hind legs: she may not limp.
        [new("SU", Foot.Lh, 16, 10, 0.17, Paired: true), new("SU", Foot.Rh, 16, 10, 0.15, Paired: true)],
        // Well grown, a fortnight old.
        [new("WLF", Foot.Lh, 14, 10, 0.14)],
        // A fore leg.
        [new("WLA", Foot.Rf, 10, 6, 0.15)],
        // Just begun.
        [new("SU", Foot.Rh, 3, 12, 0.20)],
        // Treated at the last visit, healing.
        [new("SU", Foot.Lh, 24, 10, 0.22, 12, 6)],
        // Treated five and a half weeks ago, stalled.
        [new("WLF", Foot.Rh, 60, 12, 0.20, 40, 6, 0.6)],
        // Treated ten weeks ago and sound again.
        [new("DD", Foot.Lh, 78, 6, 0.16, 68, 6)],
        // Flagged, put on the list, blocked at a visit twelve weeks ago, her block looked at and taken off: sound again.
        [new("SU", Foot.Rh, 95, 8, 0.20, 82, 6)],
        // Seen to be very lame by the farm, treated, and in the hospital pen since: she does not cross.
        [new("WLA", Foot.Lh, 13, 5, 0.28, 6, 8, InHospital: true)],
    ];

    /// <summary>Days in the hospital pen for a demonstration's cow, from her treatment to beyond the end; none for the others.</summary>
    public static IEnumerable<(int First, int Last)> Hospital(HerdSpec spec, IReadOnlyList<LamenessEpisode> episodes)
    {
        var inHospital = s_cows.SelectMany(cases => cases).Single(one => one.InHospital);
        return episodes.Any(episode => episode.Lesion == inHospital.Lesion && episode.OnsetAt == spec.End.AddDays(-inHospital.OnsetDaysAgo))
            ? [((int)(episodes[0].TreatedAt!.Value - new DateTimeOffset(spec.Start, TimeOnly.MinValue, TimeSpan.Zero)).TotalDays + 1, spec.Days + 3)]
            : [];
    }

    /// <summary>The demonstration's episodes by the index of the cow that has them.</summary>
    public static Dictionary<int, List<LamenessEpisode>> Assign(HerdSpec spec, IReadOnlyList<SimulatedCow> cows)
    {
        var assigned = new Dictionary<int, List<LamenessEpisode>>();
        if (!spec.DemoCases)
            return assigned;
        var last = spec.Days - 1;
        // Cows who have been milked without a break, and well after calving, from long before their case until the end.
        var fit = Enumerable.Range(0, cows.Count).Where(i =>
        {
            var cow = cows[i];
            return cow.LeavesOn is null && cow.EntersOn < last - 150 && cow.DaysInMilkOn(last) > 150
                && cow.IsMilkedOn(last + 14) && cow.DaysToCalvingOn(last) is null or > 75;
        }).ToArray();
        if (fit.Length < s_cows.Length)
            throw new InvalidOperationException($"A demonstration needs {s_cows.Length} cows in mid-lactation at its end; of {cows.Count} only {fit.Length} are. Take another seed or more cows.");
        var random = new SeededRandom(spec.Seed, 20);
        for (var i = fit.Length - 1; i > 0; i--)
        {
            var j = random.Below(i + 1);
            (fit[i], fit[j]) = (fit[j], fit[i]);
        }

        for (var c = 0; c < s_cows.Length; c++)
        {
            var cow = cows[fit[c]];
            assigned[fit[c]] = [.. s_cows[c].Select(one => new LamenessEpisode
            {
                Cow = cow.Number,
                Foot = one.Foot,
                IsPaired = one.Paired,
                OnsetAt = spec.End.AddDays(-one.OnsetDaysAgo),
                RampDays = one.RampDays,
                PlateauDrop = one.Drop,
                Lesion = one.Lesion,
                Healing = one.TreatedDaysAgo > 0
                    ? [new(new DateTimeOffset(spec.End.AddDays(-one.TreatedDaysAgo).Date, TimeSpan.Zero).AddHours(10.5), one.HalfLife, one.Remaining, true, Lesion.Of(one.Lesion).TakesBlock)]
                    : [],
            })];
        }

        return assigned;
    }
}
