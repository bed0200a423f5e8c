using System.Collections.Immutable;

namespace GaitWatch.Herd;

/// <summary>What a registration must fulfil before it is taken.</summary>
public static class HerdRegisterFaults
{
    /// <summary>Longest name of a cow or pen, characters.</summary>
    public const int LongestName = 40;

    /// <summary>Everything wrong with a registration: field and sentence, empty when nothing is.</summary>
    public static ImmutableArray<(string Field, string Fault)> Of(CowRegistration registration)
    {
        var faults = ImmutableArray.CreateBuilder<(string, string)>();
        if (string.IsNullOrWhiteSpace(registration.Cow) || registration.Cow.Length > LongestName || HasControl(registration.Cow))
            faults.Add(("cow", $"cow is '{Shorten(registration.Cow)}': a number or name of 1 to {LongestName} characters."));
        if (registration.Pen is { } pen && (pen.Length > LongestName || HasControl(pen)))
            faults.Add(("pen", $"pen is '{Shorten(pen)}': at most {LongestName} characters."));
        if (registration.Parity is < 0 or > 20)
            faults.Add(("parity", $"parity is {registration.Parity}: 0 to 20 calvings."));
        if (registration is { DriedOffOn: { } dried, CalvedOn: { } calved } && dried < calved)
            faults.Add(("driedOffOn", $"driedOffOn is {dried:yyyy-MM-dd}, before calvedOn {calved:yyyy-MM-dd}: a cow is dried off after she calved; leave it empty while she is in milk."));
        if (registration is { DueOn: { } due, CalvedOn: { } last } && due <= last)
            faults.Add(("dueOn", $"dueOn is {due:yyyy-MM-dd}, not after calvedOn {last:yyyy-MM-dd}: leave it empty until she is in calf again."));
        return faults.ToImmutable();
    }

    private static bool HasControl(string text) => text.Any(char.IsControl);

    private static string Shorten(string text) => text.Length > LongestName ? text[..LongestName] + "…" : text;
}
