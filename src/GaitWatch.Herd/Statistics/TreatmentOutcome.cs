using System.Globalization;

namespace GaitWatch.Herd;

/// <summary>What became of the feet with one lesion and one treatment.</summary>
/// <param name="Lesion">The lesion; null for a row over several.</param>
/// <param name="Treatment">The treatment.</param>
/// <param name="Treated">How many feet were treated so.</param>
/// <param name="Sound">How many of those that could be judged were sound at 35 days.</param>
/// <param name="ToRecovery">Days until recovery was shown, feet still lame or no longer seen censored.</param>
public sealed record TreatmentOutcome(Lesion? Lesion, Treatment Treatment, int Treated, Proportion Sound, KaplanMeier ToRecovery)
{
    /// <summary>Fewer judged feet give no verdict. Chosen by us: Wilson's interval is then up to 50 points wide.</summary>
    public const int FewestForVerdict = 12;

    /// <summary>95 % interval of the sound fraction (Wilson).</summary>
    public (double Lower, double Upper) Interval => Sound.Interval();

    /// <summary>Whether so many were judged that the fraction says something.</summary>
    public bool IsEnough => Sound.Of >= FewestForVerdict;

    /// <summary>In plain words, the number behind each figure among them.</summary>
    public string Sentence
    {
        get
        {
            var what = Lesion is { } lesion ? $"{char.ToUpperInvariant(lesion.InWords()[0])}{lesion.InWords()[1..]}, {Treatment.InWords()}" : $"{Treatment.InWords()}";
            if (Sound.Of == 0)
                return $"{what}: {Feet(Treated)} treated, none judged yet.";
            var counts = $"{what}: {Sound.Count} of {Feet(Sound.Of)} sound at {TreatmentOutcomes.JudgedAfterDays} days";
            if (!IsEnough)
                return $"{counts}: too few to say.";
            var (lower, upper) = Interval;
            var half = ToRecovery.MedianDays is { } days
                ? string.Create(CultureInfo.InvariantCulture, $"half of {ToRecovery.Count} were shown to be recovered by day {days:0}")
                : $"fewer than half of {ToRecovery.Count} have been shown to be recovered";
            return string.Create(CultureInfo.InvariantCulture, $"{counts} ({100 * lower:0} to {100 * upper:0} % by chance alone); {half}.");
        }
    }

    private static string Feet(int count) => count == 1 ? "1 foot" : $"{count} feet";
}
