namespace GaitWatch.Herd;

/// <summary>Which treatment a foot got, and its names.</summary>
public static class Treatments
{
    private static readonly (Treatment Part, string Name, string Words)[] Parts =
    [
        (Treatment.Block, "block", "block"),
        (Treatment.PainRelief, "pain-relief", "pain relief"),
        (Treatment.Dressing, "dressing", "dressing"),
        (Treatment.Antibiotic, "antibiotic", "antibiotic"),
    ];

    /// <summary>The treatment of a lesion by what was done in one sitting.</summary>
    /// <param name="lesion">The lesion that was treated.</param>
    /// <param name="sitting">Every finding of that foot in that sitting.</param>
    public static Treatment Of(Lesion lesion, IReadOnlyCollection<Finding> sitting)
    {
        Treatment If(bool done, Treatment part) => done ? part : Treatment.Trim;
        var pain = If(Did(FindingAction.PainRelief), Treatment.PainRelief);
        return lesion.Site() == LesionSite.Skin
            ? pain | If(Did(FindingAction.Dressing) || Did(FindingAction.Wrap), Treatment.Dressing) | If(Did(FindingAction.Antibiotic), Treatment.Antibiotic)
            : pain | If(Did(FindingAction.Block), Treatment.Block);

        bool Did(FindingAction action) => sitting.Any(finding => finding.Did(action));
    }

    /// <summary>The treatment on the wire: its parts joined by <c>+</c>, <c>trim</c> where there are none.</summary>
    public static string WireName(this Treatment treatment) =>
        treatment == Treatment.Trim ? "trim" : string.Join('+', Parts.Where(part => treatment.HasFlag(part.Part)).Select(part => part.Name));

    /// <summary>The treatment in words, such as "trim, block and pain relief".</summary>
    public static string InWords(this Treatment treatment)
    {
        string[] words = ["trim", .. Parts.Where(part => treatment.HasFlag(part.Part)).Select(part => part.Words)];
        return words.Length == 1 ? "trim alone" : $"{string.Join(", ", words[..^1])} and {words[^1]}";
    }
}
