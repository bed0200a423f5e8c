using System.Collections.Immutable;
using System.Globalization;

namespace GaitWatch;

/// <summary>Takes single values out of a configuration and notes what is wrong with each, so that all faults are told at once.</summary>
/// <remarks>An empty value counts as not set: an environment variable cannot be taken away, only emptied.</remarks>
internal sealed class SettingValues(IConfiguration configuration)
{
    private readonly ImmutableArray<SettingFault>.Builder _faults = ImmutableArray.CreateBuilder<SettingFault>();

    /// <summary>What was found wrong so far.</summary>
    public ImmutableArray<SettingFault> Faults => _faults.ToImmutable();

    /// <summary>Notes a fault of a key below the section.</summary>
    public void Fault(string key, string? found, string right) => _faults.Add(new($"{SettingsKeys.Section}:{key}", found, right));

    /// <summary>The value as text; null when not set.</summary>
    public string? Text(string key)
    {
        var value = configuration[$"{SettingsKeys.Section}:{key}"];
        return string.IsNullOrWhiteSpace(value) ? null : value.Trim();
    }

    /// <summary>The numbers of a list's items, in order.</summary>
    public IReadOnlyList<string> Items(string key) =>
        [.. configuration.GetSection($"{SettingsKeys.Section}:{key}").GetChildren().Select(child => child.Key)];

    /// <summary>A yes or no.</summary>
    public bool YesOrNo(string key, bool otherwise)
    {
        if (Text(key) is not { } text)
            return otherwise;
        if (bool.TryParse(text, out var value))
            return value;
        Fault(key, text, "true or false.");
        return otherwise;
    }

    /// <summary>A whole number within bounds.</summary>
    public int Whole(string key, int otherwise, int least, int most, string what)
    {
        if (Text(key) is not { } text)
            return otherwise;
        if (int.TryParse(text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var value) && value >= least && value <= most)
            return value;
        Fault(key, text, $"{what}, a whole number from {least} to {most}.");
        return otherwise;
    }

    /// <summary>A number within bounds, with a point for its decimals.</summary>
    public double Number(string key, double otherwise, double least, double most, string what)
    {
        if (Text(key) is not { } text)
            return otherwise;
        if (TryNumber(text, out var value) && value >= least && value <= most)
            return value;
        Fault(key, text, string.Create(CultureInfo.InvariantCulture, $"{what}, a number from {least} to {most} such as {otherwise}."));
        return otherwise;
    }

    /// <summary>A number whose bounds are checked elsewhere.</summary>
    public double Number(string key, double otherwise, string what)
    {
        if (Text(key) is not { } text)
            return otherwise;
        if (TryNumber(text, out var value))
            return value;
        Fault(key, text, string.Create(CultureInfo.InvariantCulture, $"{what}, a number such as {otherwise}."));
        return otherwise;
    }

    private static bool TryNumber(string text, out double value) =>
        double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out value) && double.IsFinite(value);
}
