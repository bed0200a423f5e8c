using System.CommandLine;
using System.CommandLine.Parsing;

namespace GaitWatch.Simulator;

/// <summary>The options that say which herd, shared by both verbs.</summary>
internal sealed class HerdOptions
{
    private static readonly string[] s_herds = ["plain", "barn", "hard", "demo"];

    private readonly Option<string> _farm = new("--farm") { Description = "Farm in the topics.", DefaultValueFactory = _ => "home" };
    private readonly Option<string> _platform = new("--platform") { Description = "Platform in the topics.", DefaultValueFactory = _ => "parlour-exit" };
    private readonly Option<string> _herd = new("--herd")
    {
        Description = "plain: scatter only; barn: everything; hard: 40 cows, half the reads missing; demo: 60 cows, a year, lame cows at its end.",
        DefaultValueFactory = _ => "barn",
    };

    private readonly Option<int?> _cows = new("--cows") { Description = "Cows in the herd, 1 to 5000. Default 60." };
    private readonly Option<int?> _days = new("--days") { Description = "Days of history, 0 to 3660. Default 30." };
    private readonly Option<long> _seed = new("--seed") { Description = "Everything is drawn from it.", DefaultValueFactory = _ => 1 };
    private readonly Option<bool> _frames = new("--frames") { Description = "Raw frames and tags." };
    private readonly Option<bool> _summed = new("--summed") { Description = "Passages summed up by the device (default)." };

    public HerdOptions(Command command)
    {
        _herd.AcceptOnlyFromAmong(s_herds);
        _farm.Check(Topics.Fault);
        _platform.Check(Topics.Fault);
        _cows.Within(1, 5000);
        _days.Within(0, 3660);
        foreach (var option in new Option[] { _farm, _platform, _herd, _cows, _days, _seed, _frames, _summed })
            command.Options.Add(option);
        command.Validators.Add(result =>
        {
            if (result.ValueOrDefault(_frames) && result.ValueOrDefault(_summed))
                result.AddError("--frames and --summed exclude each other: choose one.");
            if (result.ValueOrDefault(_herd) == "demo" && (result.ValueOrDefault(_cows) is not null || result.ValueOrDefault(_days) is not null))
                result.AddError("--herd demo is 60 cows and a year: leave out --cows and --days.");
            if (result.ValueOrDefault(_herd) == "hard" && result.ValueOrDefault(_cows) is not null)
                result.AddError("--herd hard is 40 cows: leave out --cows.");
        });
    }

    /// <summary>True unless no history is asked for.</summary>
    public bool HasHistory(ParseResult parsed) => parsed.GetValue(_days) is not 0;

    /// <summary>The same while the command line is still being checked.</summary>
    public bool HasHistory(CommandResult result) => result.ValueOrDefault(_days) is not 0;

    /// <summary>Topics, form and platform.</summary>
    public BarnFeedOptions Feed(ParseResult parsed) => new()
    {
        Topics = new(parsed.GetValue(_farm)!, parsed.GetValue(_platform)!),
        Platform = SimulatedPlatform.Default with { Id = parsed.GetValue(_platform)! },
        Frames = parsed.GetValue(_frames),
        LiveFrames = !parsed.GetValue(_summed),
    };

    /// <summary>The herd, its history ending at an instant.</summary>
    public HerdSpec Herd(ParseResult parsed, DateTimeOffset end)
    {
        var seed = parsed.GetValue(_seed);
        var cows = parsed.GetValue(_cows) ?? 60;
        // Without a history the herd still has today.
        var days = Math.Max(1, parsed.GetValue(_days) ?? 30);
        var spec = parsed.GetValue(_herd) switch
        {
            "plain" => HerdSpec.Plain(seed, cows, days),
            "hard" => HerdSpec.Hard(seed, days),
            "demo" => HerdSpec.Demo(seed, end),
            _ => HerdSpec.Barn(seed, cows, days),
        };
        return spec.DemoCases
            ? spec
            : spec with { Start = DateOnly.FromDateTime(end.UtcDateTime).AddDays(1 - days), Until = end };
    }
}
