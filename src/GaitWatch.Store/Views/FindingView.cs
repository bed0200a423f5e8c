using GaitWatch.Herd;

namespace GaitWatch.Store;

/// <summary>A finding as the wire contract shows it, with what is unsafe in it and how to correct it.</summary>
public sealed record FindingView : FindingForm
{
    /// <summary>An empty view, to be filled from the wire.</summary>
    public FindingView()
    {
    }

    private FindingView(FindingForm form)
        : base(form)
    {
    }

    /// <summary>What can happen and should not be left so, the most pressing first.</summary>
    public IReadOnlyList<FindingWarningView> Warnings { get; init; } = [];

    /// <summary>How it may be corrected, and whether it was.</summary>
    public FindingCorrectableView? Correctable { get; init; }

    /// <summary>Since when it is taken back and counts no more; null while it counts.</summary>
    public DateTimeOffset? WithdrawnAt { get; init; }

    /// <summary>How a finding looks on the wire.</summary>
    /// <param name="history">The finding with its wordings.</param>
    /// <param name="log">Every finding: whether a block is safe is told by the others of that foot.</param>
    public static FindingView Of(FindingHistory history, FindingLog log) => new(FindingForm.Of(history.Current))
    {
        Warnings = [.. FindingWarnings.Of(history.Current, log.OfCow(history.Current.Cow)).Select(warning => new FindingWarningView(warning.WireName, warning.Field, warning.Sentence))],
        Correctable = new FindingCorrectableView(
            $"/api/findings/{Uri.EscapeDataString(history.Current.Id)}",
            history.Versions.Length,
            history.Versions[0].EnteredAt,
            history.Versions.Length > 1 ? history.Versions[^1].EnteredAt : null),
        WithdrawnAt = history.WithdrawnAt,
    };
}

/// <summary>Something in a finding that should not be left so.</summary>
/// <param name="Kind">What it is about, such as <c>unsafe-block</c>.</param>
/// <param name="Field">The field that shows it.</param>
/// <param name="Sentence">What is seen and what to do.</param>
public sealed record FindingWarningView(string Kind, string Field, string Sentence);

/// <summary>How a finding may be corrected, and whether it was.</summary>
/// <param name="Route">Where a correction is put; the earlier wording is kept.</param>
/// <param name="Versions">How many wordings it has had, the present one among them.</param>
/// <param name="EnteredAt">When it was entered first.</param>
/// <param name="CorrectedAt">When it was corrected last; null when it never was.</param>
public sealed record FindingCorrectableView(string Route, int Versions, DateTimeOffset EnteredAt, DateTimeOffset? CorrectedAt);
