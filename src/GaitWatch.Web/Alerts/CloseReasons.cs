using System.Collections.Immutable;
using GaitWatch.Lameness;

namespace GaitWatch.Web;

/// <summary>The reasons for which a person closes an alert.</summary>
internal static class CloseReasons
{
    /// <summary>Those of the contract; a load back to normal is for GaitWatch to see.</summary>
    public static ImmutableArray<AlertCloseReason> ByHand { get; } =
        [.. Enum.GetValues<AlertCloseReason>().Where(reason => reason != AlertCloseReason.LoadNormal)];

    public static bool TryParse(string? text, out AlertCloseReason reason) =>
        AlertNames.TryParse(text, AlertNames.WireName, out reason) && ByHand.Contains(reason);
}
