namespace GaitWatch;

/// <summary>Progress on standard error: on a terminal one line that is written over, else a line now and then.</summary>
internal sealed class ProgressLine(CommandContext context)
{
    private static readonly TimeSpan Now = TimeSpan.FromMilliseconds(100);

    private static readonly TimeSpan NowAndThen = TimeSpan.FromSeconds(5);

    private long _lastShown;
    private int _width;

    /// <summary>Shows how far it is; not more often than a person can read.</summary>
    public void Show(string text)
    {
        if (_lastShown != 0 && context.Time.GetElapsedTime(_lastShown) < (context.ErrorIsTerminal ? Now : NowAndThen))
            return;
        _lastShown = context.Time.GetTimestamp();
        if (context.ErrorIsTerminal)
            context.Error.Write($"\r{text.PadRight(_width)}");
        else
            context.Error.WriteLine(text);
        _width = text.Length;
    }

    /// <summary>Takes the line away: what follows stands in its own.</summary>
    public void End()
    {
        if (context.ErrorIsTerminal && _width > 0)
            context.Error.Write($"\r{new string(' ', _width)}\r");
        _width = 0;
    }
}
