namespace GaitWatch;

/// <summary>A command cannot do what it was asked. The message is one clear sentence (or a few lines) for the person at the terminal.</summary>
internal sealed class CommandFailedException : Exception
{
    /// <summary>Makes the exception.</summary>
    public CommandFailedException(string message)
        : base(message)
    {
    }

    /// <summary>Makes the exception.</summary>
    public CommandFailedException(string message, Exception inner)
        : base(message, inner)
    {
    }
}
