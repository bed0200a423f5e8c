namespace GaitWatch.Web;

/// <summary>Words of the pages about cows.</summary>
internal static class CowTexts
{
    public const string ListTitle = "Cows";
    public const string Search = "Number, tag or pen";
    public const string NoneFound = "No cow fits.";
    public const string Charts = "How she carries her weight";
    public const string HowToRead =
        "Each dot is a day’s mean of the weight that the leg carries, in per cent of her own. The grey band is her own normal: while nothing is wrong nearly all dots lie in it. "
        + "The bars below show how much evidence has gathered that the leg carries less; at the line she is flagged.";
    public const string NoData = "She has not crossed in this time.";
    public const string Passages = "Recent crossings";
    public const string Register = "Register";
    public const string PastAlerts = "Earlier flags";
    public const string Unknown = "not told";
    public const string NoNormalYet = "Her normal is still being learnt.";

    public static string Title(string cow) => $"Cow {cow}";

    public static string Span(int days) => days == 365 ? "1\u00A0year" : $"{days}\u00A0days";

    public static string Shown(int shown, int all) => shown == all ? $"all {all}" : $"the last {shown} of {all}";
}
