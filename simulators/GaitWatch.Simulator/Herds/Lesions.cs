namespace GaitWatch.Simulator;

/// <summary>
/// The troubles a trimmer finds, how fast each comes on and what is done. Codes: ICAR Claw Health Atlas; a stone near the toe comes
/// on quickly, under the heel slower (Greenough, Merck Veterinary Manual); which claw: common practice. Frequencies are invented.
/// </summary>
internal sealed record Lesion(string Code, double HindWeight, double ForeWeight, double RampLow, double RampHigh, int[] Zones, bool IsSkin, bool TakesBlock)
{
    private static readonly Lesion[] s_all =
    [
        new("SU", 0.30, 0.15, 8, 24, [4], false, true),
        new("WLA", 0.15, 0.25, 4, 12, [2, 3], false, true),
        new("WLF", 0.12, 0.15, 8, 20, [2, 3], false, true),
        new("SHC", 0.10, 0.12, 10, 25, [4, 5], false, false),
        new("DD", 0.20, 0.03, 4, 10, [10], true, false),
        new("IP", 0.04, 0.06, 1.5, 3, [0], true, false),
        new("foreign-body", 0.06, 0.14, 1.5, 8, [5, 6], false, true),
        new("TU", 0.03, 0.10, 4, 10, [1], false, true),
    ];

    public static Lesion Of(string code) => s_all.Single(lesion => lesion.Code == code);

    public static Lesion Draw(SeededRandom random, bool hind)
    {
        double Weight(Lesion lesion) => hind ? lesion.HindWeight : lesion.ForeWeight;
        var at = random.Uniform() * s_all.Sum(Weight);
        foreach (var lesion in s_all)
        {
            at -= Weight(lesion);
            if (at < 0)
                return lesion;
        }

        return s_all[0];
    }

    /// <summary>What is noted at the chute.</summary>
    public ChuteFinding Find(SeededRandom random, string id, Foot foot, double drop, bool block, bool painRelief)
    {
        // Behind mostly the outer claw, in front more often the inner.
        var claw = IsSkin ? null : random.Chance(foot.IsFore() ? 0.4 : 0.85) ? "outer" : "inner";
        // Foul in the foot is the veterinarian's.
        List<string> actions = Code == "IP" ? ["refer-to-vet"] : ["trimmed"];
        if (Code is "SU" or "WLA" or "WLF" or "TU")
            actions.Add("loose-horn-removed");
        if (Code == "foreign-body")
            actions.Add("foreign-body-removed");
        if (Code == "DD")
            actions.AddRange(["dressing", "wrap"]);
        if (block)
            actions.Add("block");
        if (painRelief)
            actions.Add("pain-relief");
        return new(
            id,
            foot,
            claw,
            Zones[random.Below(Zones.Length)],
            Code,
            Code == "DD" ? null : drop > 0.2 ? 3 : drop > 0.1 ? 2 : 1,
            Code == "DD" ? "M2" : null,
            actions,
            block ? claw == "outer" ? "inner" : "outer" : null,
            Code == "foreign-body" ? 3 + random.Below(8) : null);
    }
}
