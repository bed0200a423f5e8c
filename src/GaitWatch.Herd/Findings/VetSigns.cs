namespace GaitWatch.Herd;

/// <summary>Names on the wire and words of the signs that ask for the veterinarian the same day.</summary>
public static class VetSigns
{
    /// <summary>The sign on the wire.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is no sign.</exception>
    public static string WireName(this VetSign sign) => sign switch
    {
        VetSign.NoWeightOnLeg => "no-weight-on-leg",
        VetSign.SwellingAboveClaw => "swelling-above-claw",
        VetSign.SwellingBetweenClaws => "swelling-between-claws",
        VetSign.DeepInfection => "deep-infection",
        VetSign.BothClawsSore => "both-claws-sore",
        VetSign.BleedingDoesNotStop => "bleeding-does-not-stop",
        VetSign.LameNothingInFoot => "lame-nothing-in-foot",
        VetSign.NotBetterAtBlockCheck => "not-better-at-block-check",
        VetSign.DownFeverishOffFeed => "down-feverish-off-feed",
        VetSign.BlistersInHerd => "blisters-in-herd",
        _ => throw new ArgumentOutOfRangeException(nameof(sign), sign, "Not a sign of the contract."),
    };

    /// <summary>What is seen, in plain words.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is no sign.</exception>
    public static string InWords(this VetSign sign) => sign switch
    {
        VetSign.NoWeightOnLeg => "puts no weight on the leg",
        VetSign.SwellingAboveClaw => "swollen above the claw",
        VetSign.SwellingBetweenClaws => "swollen between the claws, with fever or a foul smell",
        VetSign.DeepInfection => "pus or a deep smell: bone, tendon or joint may be in it",
        VetSign.BothClawsSore => "both claws sore, none sound enough to carry a block",
        VetSign.BleedingDoesNotStop => "bleeding that does not stop",
        VetSign.LameNothingInFoot => "clearly lame with nothing in the foot: look higher up the leg",
        VetSign.NotBetterAtBlockCheck => "no better when the block was looked at",
        VetSign.DownFeverishOffFeed => "down, feverish or off feed",
        VetSign.BlistersInHerd => "several cows lame with blisters, drooling or fever",
        _ => throw new ArgumentOutOfRangeException(nameof(sign), sign, "Not a sign of the contract."),
    };

    /// <summary>What to do about it, as a sentence.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is no sign.</exception>
    public static string Advice(this VetSign sign) => sign == VetSign.BlistersInHerd
        ? "Move no animal and call the veterinarian at once: several cows lame with blisters, drooling or fever may have foot-and-mouth disease, which is notifiable."
        : $"Call the veterinarian today: {sign.InWords()}.";
}
