using System.Globalization;

namespace GaitWatch.Benchmarks;

/// <summary>How much the accuracy report simulates.</summary>
internal sealed record AccuracyOptions
{
    /// <summary>Crossings at one pace, of each source.</summary>
    public int Steady { get; init; } = 2000;

    /// <summary>Crossings that change their pace or are slow, of each source.</summary>
    public int Varied { get; init; } = 2000;

    /// <summary>Crossings with feet partly over an edge, half of them varied, of each source.</summary>
    public int Edges { get; init; } = 1000;

    /// <summary>Crossings a row of other platforms.</summary>
    public int Platforms { get; init; } = 200;

    /// <summary>Pairs of crossings a row of zeros that drift and step.</summary>
    public int Zeros { get; init; } = 100;

    /// <summary>Crossings of each bad kind, of each source.</summary>
    public int Bad { get; init; } = 200;

    /// <summary>Cows in the queue whose tags are read.</summary>
    public int Queue { get; init; } = 1000;

    /// <summary>First seed; the others follow it.</summary>
    public long Seed { get; init; } = 5_000_001;

    /// <summary>The numpy reference is run on the first so many recordings of a row, 0 for none.</summary>
    public int Reference { get; init; } = 1000;

    /// <summary>Reads <c>--steady N</c> and the like; null with a message when something is not understood.</summary>
    public static (AccuracyOptions? Options, string? Fault) Parse(ReadOnlySpan<string> arguments)
    {
        var options = new AccuracyOptions();
        for (var i = 0; i < arguments.Length; i++)
        {
            if (i + 1 >= arguments.Length || !long.TryParse(arguments[i + 1], NumberStyles.None, CultureInfo.InvariantCulture, out var number) || number > int.MaxValue)
                return (null, $"'{arguments[i]}' needs a whole number after it.");
            var count = (int)number;
            switch (arguments[i++])
            {
                case "--steady": options = options with { Steady = count }; break;
                case "--varied": options = options with { Varied = count }; break;
                case "--edges": options = options with { Edges = count }; break;
                case "--platforms": options = options with { Platforms = count }; break;
                case "--zeros": options = options with { Zeros = count }; break;
                case "--bad": options = options with { Bad = count }; break;
                case "--queue": options = options with { Queue = count }; break;
                case "--reference": options = options with { Reference = count }; break;
                case "--seed": options = options with { Seed = number }; break;
                default: return (null, $"'{arguments[i - 1]}' is none of --steady, --varied, --edges, --platforms, --zeros, --bad, --queue, --reference, --seed, each with a number.");
            }
        }

        return (options, null);
    }
}
