using System.Collections.Immutable;
using GaitWatch.Gait;

namespace GaitWatch;

/// <summary>Reads the platforms' geometry. Where none is set up there is the twin plate of the contract.</summary>
internal static class PlatformSettingsReader
{
    /// <summary>Reads the list under <c>Platforms</c>.</summary>
    public static ImmutableArray<TwinPlate> Read(SettingValues values)
    {
        var items = values.Items("Platforms");
        if (items.Count == 0)
            return [TwinPlate.Default];
        var platforms = items.Select(item => Platform(values, $"Platforms:{item}")).ToImmutableArray();
        foreach (var twice in platforms.Select((platform, i) => (platform.Id, Item: items[i])).GroupBy(p => p.Id, StringComparer.Ordinal).Where(g => g.Count() > 1))
            values.Fault($"Platforms:{twice.Last().Item}:Id", twice.Key, "each platform has an id of its own.");
        return platforms;
    }

    private static TwinPlate Platform(SettingValues values, string key)
    {
        if (values.Text($"{key}:Kind") is { } kind && !kind.Equals("twin-plate", StringComparison.OrdinalIgnoreCase))
            values.Fault($"{key}:Kind", kind, "'twin-plate', the one kind of platform there is.");
        var cells = values.Items($"{key}:Cells").Select(item => Cell(values, $"{key}:Cells:{item}")).ToImmutableArray();
        // A platform that is named and no more is the contract's twin plate under that name.
        var unfinished = new TwinPlate { Id = values.Text($"{key}:Id") ?? "", Cells = cells.IsEmpty && !LengthIsSet(values, key) ? TwinPlate.Default.Cells : cells };
        var platform = unfinished with
        {
            PlateLengthMetres = values.Number($"{key}:PlateLengthMetres", unfinished.PlateLengthMetres, "length of the plates, metres"),
            SampleRateHz = values.Number($"{key}:SampleRateHz", unfinished.SampleRateHz, "samples a second"),
            AccuracyClass = values.Text($"{key}:AccuracyClass") ?? unfinished.AccuracyClass,
            VerificationIntervalKg = values.Number($"{key}:VerificationIntervalKg", unfinished.VerificationIntervalKg, "the scale interval e, kg"),
        };
        foreach (var fault in platform.Faults())
            values.Fault(key, platform.Id, fault);
        return platform;
    }

    private static bool LengthIsSet(SettingValues values, string key) => values.Text($"{key}:PlateLengthMetres") is not null;

    private static LoadCell Cell(SettingValues values, string key)
    {
        var id = values.Text($"{key}:Id");
        if (id is null)
            values.Fault($"{key}:Id", null, "the cell's name in the frames, such as 'l0'.");
        var plate = values.Text($"{key}:Plate");
        var side = PlateSide.Left;
        if (plate is null || !Enum.TryParse(plate, ignoreCase: true, out side) || !Enum.IsDefined(side) || char.IsAsciiDigit(plate[0]))
            values.Fault($"{key}:Plate", plate, "'left' or 'right', as the cow walks.");
        if (values.Text($"{key}:X") is null)
            values.Fault($"{key}:X", null, "where the cell stands, metres from the entry edge.");
        return new LoadCell(id ?? "", side, values.Number($"{key}:X", 0, "where the cell stands, metres from the entry edge"));
    }
}
