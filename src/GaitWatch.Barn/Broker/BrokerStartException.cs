namespace GaitWatch.Barn;

/// <summary>The broker inside cannot start. The message names the setting, what is wrong and what to do.</summary>
public sealed class BrokerStartException : Exception
{
    /// <summary>Makes the exception.</summary>
    public BrokerStartException()
    {
    }

    /// <summary>Makes the exception.</summary>
    public BrokerStartException(string message)
        : base(message)
    {
    }

    /// <summary>Makes the exception.</summary>
    public BrokerStartException(string message, Exception inner)
        : base(message, inner)
    {
    }
}
