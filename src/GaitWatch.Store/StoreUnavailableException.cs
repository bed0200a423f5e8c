namespace GaitWatch.Store;

/// <summary>The store cannot be read or written now: disk full, file locked, damaged, or of a newer version. The message says which and what to do.</summary>
public sealed class StoreUnavailableException : Exception
{
    /// <summary>Makes the exception.</summary>
    public StoreUnavailableException()
    {
    }

    /// <summary>Makes the exception.</summary>
    public StoreUnavailableException(string message)
        : base(message)
    {
    }

    /// <summary>Makes the exception.</summary>
    public StoreUnavailableException(string message, Exception inner)
        : base(message, inner)
    {
    }
}
