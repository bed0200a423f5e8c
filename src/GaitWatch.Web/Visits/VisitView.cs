namespace GaitWatch.Web;

/// <summary>A planned visit of the trimmer.</summary>
/// <param name="Date">The day.</param>
/// <param name="Half">Null for the whole day, <c>am</c> or <c>pm</c>.</param>
/// <param name="Trimmer">Who comes; null when not said.</param>
/// <param name="Places">How many cows the visit has room for; null when not said.</param>
internal sealed record VisitView(DateOnly Date, string? Half, string? Trimmer, int? Places);
