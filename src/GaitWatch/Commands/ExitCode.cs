namespace GaitWatch;

/// <summary>What the program ends with.</summary>
internal static class ExitCode
{
    /// <summary>Done.</summary>
    public const int Done = 0;

    /// <summary>It could not be done; standard error says why.</summary>
    public const int Failed = 1;

    /// <summary>The command was not understood.</summary>
    public const int WrongUsage = 2;
}
