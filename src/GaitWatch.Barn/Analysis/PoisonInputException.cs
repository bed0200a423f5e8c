namespace GaitWatch.Barn;

/// <summary>One input makes the analysis fail.</summary>
internal sealed class PoisonInputException : Exception
{
    public PoisonInputException()
    {
    }

    public PoisonInputException(string message)
        : base(message)
    {
    }

    public PoisonInputException(string message, Exception inner)
        : base(message, inner)
    {
    }

    /// <summary>Tells it from every other of a history.</summary>
    public string Key { get; init; } = "";
}
