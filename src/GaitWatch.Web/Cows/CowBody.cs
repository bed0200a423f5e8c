using System.ComponentModel;

namespace GaitWatch.Web;

/// <summary>The body that registers a cow: all that holds of her from an instant on. What is left out is not known from then on.</summary>
internal sealed record CowBody
{
    [Description("When it was entered; default: arrival.")]
    public DateTimeOffset? At { get; init; }

    [Description("From when it holds: an instant or a date (midnight in the farm's zone); default: at. A cow's first registration holds from her first passage.")]
    public DateTimeOffset? From { get; init; }

    [Description("Her number; may be left out, else as in the route.")]
    public string? Cow { get; init; }

    [Description("Her electronic tag: 15 digits by ISO 11784.")]
    public string? Eid { get; init; }

    [Description("Where she is kept.")]
    public string? Pen { get; init; }

    [Description("How often she has calved, 0 to 20.")]
    public int? Parity { get; init; }

    [Description("Day of her last calving.")]
    public DateOnly? CalvedOn { get; init; }

    [Description("Day she was dried off, while she is dry.")]
    public DateOnly? DriedOffOn { get; init; }

    [Description("Day she is due to calve.")]
    public DateOnly? DueOn { get; init; }

    [Description("Day she left the herd.")]
    public DateOnly? LeftOn { get; init; }
}
