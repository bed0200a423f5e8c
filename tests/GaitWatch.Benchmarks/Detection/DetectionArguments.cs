using System.Globalization;
using GaitWatch.Lameness;
using GaitWatch.Simulator;

namespace GaitWatch.Benchmarks;

/// <summary>What the detection report is asked for.</summary>
/// <param name="Herds">Kinds of herds: plain, barn, hard, and one of a source apart.</param>
/// <param name="Seeds">Seeds, one herd each.</param>
/// <param name="Cows">Cows of a plain herd or a barn; a hard herd has forty.</param>
/// <param name="Days">Days of history.</param>
/// <param name="Budgets">False flags asked for, a week per 100 cows.</param>
/// <param name="Picture">Where the reliability diagram is written; null: nowhere. The kind of herd is put before the ending.</param>
internal sealed record DetectionArguments(string[] Herds, long[] Seeds, int Cows, int Days, double[] Budgets, string? Picture)
{
    public const string Usage =
        "detection [--seeds 11,12,13] [--herd plain|barn|hard|second|all] [--cows 200] [--days 240] [--budget 1[,0.3,3]] [--picture reliability.png]";

    private const string Second = "second";
    private static readonly string[] _all = ["plain", "barn", "hard", Second];

    /// <summary>Reads them.</summary>
    /// <exception cref="FormatException">One cannot be read; says which and what would be right.</exception>
    public static DetectionArguments Read(ReadOnlySpan<string> args)
    {
        var read = new DetectionArguments(_all, [11, 12, 13, 14, 15, 16], 200, 240, [1], null);
        for (var i = 0; i < args.Length; i += 2)
        {
            var name = args[i];
            var value = i + 1 < args.Length ? args[i + 1] : throw new FormatException($"{name} has no value: {Usage}");
            read = name switch
            {
                "--seeds" => read with { Seeds = [.. value.Split(',').Select(part => (long)Number(name, part, 0, 1e9))] },
                "--herd" when value == "all" => read with { Herds = _all },
                "--herd" when _all.Contains(value) => read with { Herds = [value] },
                "--herd" => throw new FormatException($"--herd is '{value}': one of plain, barn, hard, second, all is needed."),
                "--cows" => read with { Cows = (int)Number(name, value, 10, 5000) },
                "--days" => read with { Days = (int)Number(name, value, 80, 1500) },
                "--budget" => read with { Budgets = [.. value.Split(',').Select(part => Number(name, part, 0.01, 50))] },
                "--picture" => read with { Picture = value },
                _ => throw new FormatException($"'{name}' is not known: {Usage}"),
            };
        }

        return read;
    }

    /// <summary>Whether an oracle can be told the truth of such herds: it is made of the first source's laws.</summary>
    public static bool HasOracle(string kind) => kind != Second;

    /// <summary>The history of a herd of a kind and seed.</summary>
    public (HerdHistory History, List<HerdInput> Inputs) Draw(string kind, long seed) =>
        kind == Second ? SecondSourceHistory.Of(seed, Cows, Days) : FirstSourceHistory.Of(Herd(kind, seed));

    // All kinds have lame cows; the plain one nothing else but scatter.
    private HerdSpec Herd(string kind, long seed) => kind switch
    {
        "plain" => HerdSpec.Plain(seed, Cows, Days) with { CasesPer100CowsAndYear = 40, MilkingsPerDay = seed % 2 == 0 ? 2 : 3 },
        "barn" => HerdSpec.Barn(seed, Cows, Days),
        _ => HerdSpec.Hard(seed, Days),
    };

    private static double Number(string name, string text, double least, double most) =>
        double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var value) && value >= least && value <= most
            ? value
            : throw new FormatException($"{name} is '{text}': a number from {least} to {most} is needed.");
}
