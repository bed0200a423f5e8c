namespace GaitWatch.Web;

/// <summary>Words of the page about platforms.</summary>
internal static class PlatformTexts
{
    public const string Title = "Platforms";
    public const string Rejected = "Messages that could not be used";
    public const string NoneRejected = "None.";
    public const string NoShift = "not known yet";

    public static string State(string state) => state switch
    {
        "ok" => "Working",
        "offline" => "Offline",
        _ => "Needs attention",
    };
}
