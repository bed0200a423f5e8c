namespace GaitWatch;

/// <summary>How one thing stands.</summary>
internal enum CheckState
{
    /// <summary>As it should be.</summary>
    Ok,

    /// <summary>It works, but look at it.</summary>
    Notice,

    /// <summary>It does not work.</summary>
    Fault,
}

/// <summary>What a check found.</summary>
/// <param name="What">The thing looked at: settings, data, store, clock, pages, broker, platforms.</param>
/// <param name="State">How it stands.</param>
/// <param name="Found">What was found.</param>
/// <param name="ToDo">What to do about it; null when there is nothing to do.</param>
internal sealed record CheckLine(string What, CheckState State, string Found, string? ToDo = null)
{
    /// <summary>Nothing to do.</summary>
    public static CheckLine Ok(string what, string found) => new(what, CheckState.Ok, found);

    /// <summary>Something to look at.</summary>
    public static CheckLine Notice(string what, string found, string? toDo = null) => new(what, CheckState.Notice, found, toDo);

    /// <summary>Something that does not work.</summary>
    public static CheckLine Fault(string what, string found, string? toDo = null) => new(what, CheckState.Fault, found, toDo);

    /// <summary>The state's word.</summary>
    public string StateWord => State switch
    {
        CheckState.Ok => "ok",
        CheckState.Notice => "notice",
        _ => "fault",
    };
}
