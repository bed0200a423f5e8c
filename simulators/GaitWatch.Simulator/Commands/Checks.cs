using System.CommandLine;
using System.CommandLine.Parsing;
using System.Globalization;

namespace GaitWatch.Simulator;

/// <summary>Checks of option values that leave to the parser what it reports itself: a value missing, twice, or of the wrong kind.</summary>
internal static class Checks
{
    /// <summary>Refuses a given value for which <paramref name="fault"/> has words.</summary>
    public static void Check<T>(this Option<T> option, Func<T, string?> fault) => option.Validators.Add(result =>
    {
        if (result.Tokens.Count == 0)
            return;
        T value;
        try
        {
            value = result.GetValueOrDefault<T>()!;
        }
        catch (InvalidOperationException)
        {
            // Not to be read: the parser says so.
            return;
        }

        if (value is not null && fault(value) is { } words)
            result.AddError($"{option.Name} is {words}");
    });

    /// <summary>Refuses what lies outside two bounds.</summary>
    public static void Within(this Option<int?> option, int low, int high) => option.Check(value =>
        value < low || value > high ? string.Create(CultureInfo.InvariantCulture, $"{value}: from {low} to {high} would be right.") : null);

    /// <summary>The option's value, or its type's default where the parser could not read it.</summary>
    public static T? ValueOrDefault<T>(this CommandResult result, Option<T> option)
    {
        try
        {
            return result.GetValue(option);
        }
        catch (InvalidOperationException)
        {
            return default;
        }
    }
}
