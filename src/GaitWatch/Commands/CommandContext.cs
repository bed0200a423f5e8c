using GaitWatch.Store;

namespace GaitWatch;

/// <summary>What every command is given: where to write, the settings of the command line, the clock.</summary>
internal sealed record CommandContext
{
    /// <summary>Results go here.</summary>
    public required TextWriter Out { get; init; }

    /// <summary>Errors, notices and progress go here.</summary>
    public required TextWriter Error { get; init; }

    /// <summary>Recorded inputs for <c>replay -</c> come from here.</summary>
    public required Func<Stream> In { get; init; }

    /// <summary>Whether a person watches <see cref="Out"/>: colours and the terminal's width, else plain text.</summary>
    public bool OutIsTerminal { get; init; }

    /// <summary>Whether a person watches <see cref="Error"/>: a progress line that is written over, else a line now and then.</summary>
    public bool ErrorIsTerminal { get; init; }

    /// <summary>Settings given on the command line, such as <c>--GaitWatch:Farm=home</c>.</summary>
    public IReadOnlyList<string> SettingArguments { get; init; } = [];

    /// <summary>The clock.</summary>
    public TimeProvider Time { get; init; } = TimeProvider.System;

    /// <summary>The console of this process.</summary>
    public static CommandContext OfProcess() => new()
    {
        Out = Console.Out,
        Error = Console.Error,
        In = Console.OpenStandardInput,
        OutIsTerminal = !Console.IsOutputRedirected,
        ErrorIsTerminal = !Console.IsErrorRedirected,
    };

    /// <summary>Where the settings come from.</summary>
    /// <exception cref="CommandFailedException">A settings file cannot be read.</exception>
    public IConfigurationRoot Configuration() => SettingsSource.Load(SettingArguments);

    /// <summary>Reads the settings without judging them.</summary>
    public static SettingsResult ReadSettings(IConfiguration configuration) =>
        SettingsReader.Read(configuration, TimeZoneInfo.Local, Environment.CurrentDirectory);

    /// <summary>Reads the settings; notices go to <see cref="Error"/>.</summary>
    /// <exception cref="CommandFailedException">Any cannot be used; the message lists them all.</exception>
    public GaitWatchSettings Settings(IConfiguration configuration, bool tellNotices = false)
    {
        var result = ReadSettings(configuration);
        if (tellNotices)
        {
            foreach (var notice in result.Notices)
                Error.WriteLine($"Notice: {notice}");
        }

        return result.Settings
            ?? throw new CommandFailedException($"The settings cannot be used:{string.Concat(result.Faults.Select(fault => $"\n  {fault}"))}");
    }

    /// <summary>Writes an error as people should see it.</summary>
    public void TellError(Exception e) => Error.WriteLine(e is CommandFailedException or StoreUnavailableException ? e.Message : $"{e.Message} ({e.GetType().Name})");
}
