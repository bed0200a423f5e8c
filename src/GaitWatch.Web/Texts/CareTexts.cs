using System.Collections.Immutable;

namespace GaitWatch.Web;

/// <summary>
/// When to call the veterinarian, and care at work. Common practice, no source: it points and does not diagnose; the farm's
/// veterinarian and local rules decide.
/// </summary>
internal static class CareTexts
{
    public const string Heading = "Call the veterinarian the same day";

    public const string Intro = "when a cow shows any of these:";

    public static ImmutableArray<string> Signs { get; } =
    [
        "puts no weight on the leg",
        "is swollen above the claw",
        "is swollen between the claws, with fever or a foul smell",
        "pus, a smell from deep inside, or bone, tendon or joint may be hurt",
        "both claws of the foot are sore, so that none is left for a block",
        "bleeds and it does not stop",
        "is clearly lame but the foot shows nothing: look higher up the leg",
        "is no better when the block is checked",
        "lies and will not rise, has a fever, or does not eat",
    ];

    public const string Outbreak =
        "Several cows lame with blisters, drooling or fever: move no animal and call at once. Foot-and-mouth disease must be reported.";

    public const string Limits =
        "GaitWatch points at cows; it does not diagnose. This is common practice; your veterinarian and local rules decide.";

    public const string Handling =
        "Lift feet in a chute or with the leg secured, never alone, hands clear of ropes and moving parts; keep people away from knives and grinders.";
}
