using System.Globalization;
using GaitWatch.Store;

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

    public static string Ends(string plate) => plate == "left" ? "Left plate, exit end against entry end" : "Right plate, exit end against entry end";

    public static string EndsFigure(PlateEndsView ends) =>
        string.Create(CultureInfo.InvariantCulture, $"{ends.Percent:+0.0;-0.0;0.0}\u00A0%, give or take {ends.ErrorPercent:0.0}");

    public static string Verdict(CalibrationView kept) =>
        string.Create(CultureInfo.InvariantCulture, $"{kept.WeightKg:0.#}\u00A0kg by {kept.By}: {(kept.Verdict == "within" ? "reads true" : "beyond tolerance")}");
}
