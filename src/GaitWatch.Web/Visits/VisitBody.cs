using System.ComponentModel;

namespace GaitWatch.Web;

/// <summary>The body that plans a visit: all that holds of it. What is left out is not known.</summary>
internal sealed record VisitBody
{
    [Description("When it was entered; default: arrival.")]
    public DateTimeOffset? At { get; init; }

    [Description("The farm's day; default: the day in the route. Another day moves the visit there.")]
    public DateOnly? Date { get; init; }

    [Description("am, pm, or null for the whole day.")]
    public string? Half { get; init; }

    [Description("Who comes, at most 100 characters.")]
    public string? Trimmer { get; init; }

    [Description("How many cows there is time for; null when not known.")]
    public int? Places { get; init; }
}
