using System.Collections.Immutable;
using System.Text.Json;
using GaitWatch.Herd;

namespace GaitWatch.Web;

/// <summary>Words of the chute.</summary>
internal static class ChuteTexts
{
    private static readonly Words s_words = new("Chute");

    /// <summary>What foreign bodies are, as they are kept.</summary>
    public static ImmutableArray<string> BodyKinds { get; } = ["stone", "nail", "tooth", "other"];

    /// <summary>What blocks are made of, as it is kept.</summary>
    public static ImmutableArray<string> Materials { get; } = ["wood", "rubber", "plastic"];

    public static string Title => s_words.Text();

    public static string Starting => s_words.Text();

    public static string NoScript => s_words.Text();

    public static string PaperList => s_words.Text();

    public static string Undo => s_words.Text();

    public static string Cow => s_words.Text();

    public static string WhichFoot => s_words.Text();

    public static string AnotherCow => s_words.Text();

    public static string NextCow => s_words.Text();

    public static string HowSheWalked => s_words.Text();

    public static string WholeList => s_words.Text();

    public static string Handling => s_words.Text();

    public static string WhenVet => s_words.Text();

    public static string WhatFound => s_words.Text();

    public static string NothingTrimmed => s_words.Text();

    public static string NothingMore => s_words.Text();

    public static string OtherFoot => s_words.Text();

    public static string WhichClaw => s_words.Text();

    public static string BothClaws => s_words.Text();

    public static string Where => s_words.Text();

    public static string SeenFromBehind => s_words.Text();

    public static string HeelAbove => s_words.Text();

    public static string ZoneNotSaid => s_words.Text();

    public static string HowBad => s_words.Text();

    public static string WhichStage => s_words.Text();

    public static string WhatBody => s_words.Text();

    public static string BodySize => s_words.Text();

    public static string WhatDone => s_words.Text();

    public static string BlockAndWrap => s_words.Text();

    public static string BlockOf => s_words.Text();

    public static string BlockRule => s_words.Text();

    public static string Medicine => s_words.Text();

    public static string WithdrawalUntil => s_words.Text();

    public static string WithdrawalRule => s_words.Text();

    public static string VetSigns => s_words.Text();

    public static string WhenAgain => s_words.Text();

    public static string OtherLesion => s_words.Text();

    public static string KeepFoot => s_words.Text();

    public static string KeepCow => s_words.Text();

    public static string NumberOrTag => s_words.Text();

    public static string Keys => s_words.Text();

    public static string KeyClear => s_words.Text();

    public static string KeyBack => s_words.Text();

    public static string Letters => s_words.Text();

    public static string Back => s_words.Text();

    public static string Kept => s_words.Text();

    public static string SendNow => s_words.Text();

    public static string ShareList => s_words.Text();

    public static string OpenChute => s_words.Text();

    public static string Walk(int score) => s_words.Text($"Walk.{score}");

    public static string Group(LesionGroupName group) => s_words.Text($"Group.{group}");

    /// <summary>A lesion on a button; where a code names only the group, that the kind is not said.</summary>
    public static string Lesion(Lesion lesion) => Upper(lesion is GaitWatch.Herd.Lesion.HornFissure or GaitWatch.Herd.Lesion.SoleHaemorrhage or GaitWatch.Herd.Lesion.Ulcer or GaitWatch.Herd.Lesion.WhiteLineDisease
        ? s_words.With([FindingTexts.Lesion(lesion)], "KindNotSaid")
        : FindingTexts.Lesion(lesion));

    public static string Zone(int zone) => s_words.Text($"Zone.{zone}");

    /// <summary>A zone on a button of its own.</summary>
    public static string ZoneTitle(int zone) => Upper(s_words.With([Zone(zone), zone]));

    public static string Severity(int severity) => Upper(FindingTexts.Severity(severity));

    public static string Stage(MStage stage) => s_words.Text($"Stage.{stage.WireName()}");

    public static string Body(string kind) => s_words.Text($"Body.{kind}");

    public static string Material(string material) => s_words.Text($"Material.{material}");

    public static string Action(FindingAction action) => Upper(FindingTexts.Action(action));

    public static string Sign(VetSign sign) => s_words.Text($"Sign.{sign.WireName()}");

    /// <summary>What the script says, as JSON that can stand in a page.</summary>
    public static string ScriptWords => JsonSerializer.Serialize(
        Words.Of(Languages.Current).Where(text => text.Key.StartsWith("Chute.Script.", StringComparison.Ordinal)).ToDictionary(text => text.Key["Chute.Script.".Length..], text => text.Value));

    private static string Upper(string text) => text is [var first, .. var rest] ? char.ToUpper(first, System.Globalization.CultureInfo.CurrentCulture) + rest : "";
}
