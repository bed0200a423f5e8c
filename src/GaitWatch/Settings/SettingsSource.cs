
namespace GaitWatch;

/// <summary>
/// Where settings come from, each overriding the one before: <c>appsettings.json</c> beside the program, <c>appsettings.json</c>
/// in the current folder, files of secrets (a file a setting, named as in the environment), the environment (<c>GaitWatch__Mqtt__Port</c>), the command line (<c>--GaitWatch:Mqtt:Port=1884</c>).
/// </summary>
internal static class SettingsSource
{
    /// <summary>Name of the file.</summary>
    public const string FileName = "appsettings.json";

    // Where containers are given secrets.
    private const string SecretsFolder = "/run/secrets";

    /// <summary>Reads the sources.</summary>
    /// <param name="arguments">The settings given on the command line.</param>
    /// <exception cref="CommandFailedException">A file cannot be read or is no JSON.</exception>
    public static IConfigurationRoot Load(IReadOnlyList<string> arguments)
    {
        var builder = new ConfigurationBuilder();
        AddFile(builder, AppContext.BaseDirectory);
        if (Path.TrimEndingDirectorySeparator(Environment.CurrentDirectory) != Path.TrimEndingDirectorySeparator(AppContext.BaseDirectory))
            AddFile(builder, Environment.CurrentDirectory);
        try
        {
            AddSecrets(builder, arguments);
            builder.AddEnvironmentVariables();
            builder.AddCommandLine([.. arguments]);
            return builder.Build();
        }
        catch (InvalidDataException e)
        {
            // The message names the file; the reason (line, what was expected) is in the exceptions inside it.
            Exception cause = e;
            while (cause.InnerException is { } deeper)
                cause = deeper;
            throw new CommandFailedException($"{e.Message.TrimEnd('.')}: {cause.Message}", e);
        }
    }

    /// <summary>Whether a command-line argument is a setting: its key has a colon, such as <c>--GaitWatch:Farm=home</c>.</summary>
    public static bool IsSetting(string argument)
    {
        if (!argument.StartsWith("--", StringComparison.Ordinal))
            return false;
        var end = argument.IndexOf('=', StringComparison.Ordinal);
        return argument.AsSpan(2, (end < 0 ? argument.Length : end) - 2).Contains(':');
    }

    // Where the secrets are may itself be set, but for the secrets.
    private static void AddSecrets(ConfigurationBuilder builder, IReadOnlyList<string> arguments)
    {
        var early = new ConfigurationBuilder();
        foreach (var source in builder.Sources)
            early.Add(source);
        var folder = early.AddEnvironmentVariables().AddCommandLine([.. arguments]).Build()[$"{SettingsKeys.Section}:SecretsDirectory"];
        if (string.IsNullOrWhiteSpace(folder))
            folder = SecretsFolder;
        else if (!Directory.Exists(folder))
            throw new CommandFailedException($"{SettingsKeys.Section}:SecretsDirectory is '{folder}': a folder with a file a secret, such as GaitWatch__Influx__Token, is needed; there is none.");
        if (Directory.Exists(folder))
        {
            builder.AddKeyPerFile(files =>
            {
                files.FileProvider = new Microsoft.Extensions.FileProviders.PhysicalFileProvider(Path.GetFullPath(folder), Microsoft.Extensions.FileProviders.Physical.ExclusionFilters.None);
                files.Optional = true;
                files.IgnoreCondition = name => !name.StartsWith($"{SettingsKeys.Section}__", StringComparison.OrdinalIgnoreCase);
            });
        }
    }

    private static void AddFile(ConfigurationBuilder builder, string folder)
    {
        var path = Path.Combine(folder, FileName);
        if (File.Exists(path))
            builder.AddJsonFile(path, optional: true, reloadOnChange: false);
    }
}
