using System.Globalization;

namespace GaitWatch.Lameness;

/// <summary>What a platform's common movement is told as.</summary>
internal static class PlatformText
{
    /// <summary>The newest common movement of a platform with its explanation.</summary>
    public static PlatformShift Shift(string platform, PlatformMovement movement)
    {
        var told = Balances.FromVector(movement.Told);
        return new PlatformShift(
            platform,
            new DateTimeOffset(movement.LastTicks, TimeSpan.Zero),
            movement.Cows,
            told,
            movement.IsTrouble,
            movement.IsTrouble ? Explain(told, movement.Cows) : "");
    }

    private static string Explain(Balances told, int cows)
    {
        var sides = string.Join(", ", Side(told.ForeHind, "front", "the hind legs"), Side(told.Fore, "the left fore", "the right fore"), Side(told.Hind, "the left hind", "the right hind"));
        return string.Create(
            CultureInfo.InvariantCulture,
            $"All {cows} cows of the session have moved the same way at once ({sides}): that is the platform or the floor, not their feet. Its passages raise no alerts. Clean it, look for a stone or mud under the plates, and check each load cell with a known weight.");
    }

    private static string Side(double balance, string more, string less) => string.Create(
        CultureInfo.InvariantCulture, $"{(balance >= 0 ? more : less)} {100 * Math.Abs(balance):0} % heavier");
}
