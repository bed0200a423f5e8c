namespace GaitWatch.Barn;

/// <summary>The service stopped before an input was durable: its sender must send it again.</summary>
public sealed class IntakeClosedException : Exception
{
    /// <summary>Makes the exception.</summary>
    public IntakeClosedException()
        : base("The service is stopping; what is not acknowledged must be sent again.")
    {
    }

    /// <summary>Makes the exception.</summary>
    public IntakeClosedException(string message)
        : base(message)
    {
    }

    /// <summary>Makes the exception.</summary>
    public IntakeClosedException(string message, Exception inner)
        : base(message, inner)
    {
    }
}
