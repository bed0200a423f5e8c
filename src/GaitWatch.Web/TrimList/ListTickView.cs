using System.ComponentModel;

namespace GaitWatch.Web;

/// <summary>A cow on a visit's list, ticked off or not.</summary>
/// <param name="Visit">The visit's day.</param>
/// <param name="Cow">Her number.</param>
/// <param name="DoneAt">When she was done; null when a tick was taken back.</param>
/// <param name="By">Who said so.</param>
internal sealed record ListTickView(DateOnly Visit, string Cow, DateTimeOffset? DoneAt, string By);

/// <summary>Where a cow was put in the order of a visit's list.</summary>
/// <param name="Visit">The visit's day.</param>
/// <param name="Cow">Her number.</param>
/// <param name="Before">The cow she comes just before; null for the end.</param>
/// <param name="By">Who put her there.</param>
/// <param name="At">When.</param>
internal sealed record ListPlaceView(DateOnly Visit, string Cow, string? Before, string By, DateTimeOffset At);

/// <summary>The body of a tick; it may be left out.</summary>
internal sealed record ListTickBody
{
    [Description("When; default: arrival.")]
    public DateTimeOffset? At { get; init; }

    [Description("Who, at most 100 characters.")]
    public string? By { get; init; }
}

/// <summary>The body that puts a cow elsewhere on a visit's list.</summary>
internal sealed record ListPlaceBody
{
    [Description("When it was decided; default: arrival.")]
    public DateTimeOffset? At { get; init; }

    [Description("The number of the cow she is to come just before; null for the end of those that have a place.")]
    public string? Before { get; init; }

    [Description("Who decided it, at most 100 characters.")]
    public string? By { get; init; }
}
