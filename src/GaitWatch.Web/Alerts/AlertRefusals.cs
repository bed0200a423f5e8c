using GaitWatch.Store;

namespace GaitWatch.Web;

/// <summary>Why an alert's id leads to no alert.</summary>
internal static class AlertRefusals
{
    /// <summary>The refusal; null when there is an alert, or a successor.</summary>
    public static Refusal? Of(string id, AlertLookup? lookup) => lookup switch
    {
        null => Refusal.NotFound("id", $"id is '{id}': no alert ever had it; GET /api/alerts lists those that are."),
        { Withdrawn: true } => Refusal.Gone("id", $"id is '{id}': late data took this alert back; GET /api/alerts lists those that are."),
        { Alert: null, MovedTo: null } => Refusal.NotFound("id", $"id is '{id}': there is no such alert; GET /api/alerts lists those that are."),
        _ => null,
    };
}
