using System.Collections.Frozen;
using System.Collections.Immutable;
using System.Reflection;
using System.Runtime.CompilerServices;
using System.Text.Json;
using GaitWatch.Herd;

namespace GaitWatch.Web;

/// <summary>Words of the chute.</summary>
internal static class ChuteTexts
{
    private static readonly FrozenDictionary<string, string> s_words = Load();

    /// <summary>What foreign bodies are, as they are kept.</summary>
    public static ImmutableArray<string> BodyKinds { get; } = ["stone", "nail", "tooth", "other"];

    /// <summary>What blocks are made of, as it is kept.</summary>
    public static ImmutableArray<string> Materials { get; } = ["wood", "rubber", "plastic"];

    public static string Title => Text();

    public static string Starting => Text();

    public static string NoScript => Text();

    public static string PaperList => Text();

    public static string Undo => Text();

    public static string Cow => Text();

    public static string WhichFoot => Text();

    public static string AnotherCow => Text();

    public static string NextCow => Text();

    public static string HowSheWalked => Text();

    public static string WholeList => Text();

    public static string Handling => Text();

    public static string WhenVet => Text();

    public static string WhatFound => Text();

    public static string NothingTrimmed => Text();

    public static string NothingMore => Text();

    public static string OtherFoot => Text();

    public static string WhichClaw => Text();

    public static string BothClaws => Text();

    public static string Where => Text();

    public static string SeenFromBehind => Text();

    public static string HeelAbove => Text();

    public static string ZoneNotSaid => Text();

    public static string HowBad => Text();

    public static string WhichStage => Text();

    public static string WhatBody => Text();

    public static string BodySize => Text();

    public static string WhatDone => Text();

    public static string BlockAndWrap => Text();

    public static string BlockOf => Text();

    public static string BlockRule => Text();

    public static string Medicine => Text();

    public static string WithdrawalUntil => Text();

    public static string WithdrawalRule => Text();

    public static string VetSigns => Text();

    public static string WhenAgain => Text();

    public static string OtherLesion => Text();

    public static string KeepFoot => Text();

    public static string KeepCow => Text();

    public static string NumberOrTag => Text();

    public static string Keys => Text();

    public static string KeyClear => Text();

    public static string KeyBack => Text();

    public static string Letters => Text();

    public static string Back => Text();

    public static string Kept => Text();

    public static string SendNow => Text();

    public static string Foot(string wireName) => Text($"Foot.{wireName}");

    public static string Walk(int score) => Text($"Walk.{score}");

    public static string Group(LesionGroupName group) => Text($"Group.{group}");

    public static string Lesion(Lesion lesion) => Text($"Lesion.{lesion.WireName()}");

    public static string Zone(int zone) => Text($"Zone.{zone}");

    /// <summary>A zone on a button of its own.</summary>
    public static string ZoneTitle(int zone) => Text("ZoneTitle").Replace("{0}", Zone(zone), StringComparison.Ordinal).Replace("{1}", FormattableString.Invariant($"{zone}"), StringComparison.Ordinal);

    public static string Severity(int severity) => Text($"Severity.{severity}");

    public static string Stage(MStage stage) => Text($"Stage.{stage.WireName()}");

    public static string Body(string kind) => Text($"Body.{kind}");

    public static string Material(string material) => Text($"Material.{material}");

    public static string Action(FindingAction action) => Text($"Action.{action.WireName()}");

    public static string Sign(VetSign sign) => Text($"Sign.{sign.WireName()}");

    /// <summary>What the script says, as JSON that can stand in a page.</summary>
    public static string ScriptWords => JsonSerializer.Serialize(
        s_words.Where(text => text.Key.StartsWith("Script.", StringComparison.Ordinal)).ToDictionary(text => text.Key["Script.".Length..], text => text.Value));

    private static string Text([CallerMemberName] string key = "") => s_words.TryGetValue(key, out var text) ? text : throw new KeyNotFoundException($"No text '{key}'.");

    private static FrozenDictionary<string, string> Load()
    {
        using var stream = Assembly.GetExecutingAssembly().GetManifestResourceStream("texts/chute.json")!;
        return JsonSerializer.Deserialize<Dictionary<string, string>>(stream)!.ToFrozenDictionary(StringComparer.Ordinal);
    }
}
