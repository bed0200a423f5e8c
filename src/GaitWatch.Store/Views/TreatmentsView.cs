using GaitWatch.Herd;

namespace GaitWatch.Store;

/// <summary>What became of treated feet, by lesion and treatment.</summary>
public sealed record TreatmentsView
{
    /// <summary>The first day on which a foot of these was treated.</summary>
    public required DateOnly From { get; init; }

    /// <summary>The day after the last.</summary>
    public required DateOnly To { get; init; }

    /// <summary>Days after treatment on which it is judged.</summary>
    public required int JudgedAfterDays { get; init; }

    /// <summary>One row for each lesion and treatment that occurred.</summary>
    public required IReadOnlyList<TreatmentOutcomeView> ByLesion { get; init; }

    /// <summary>Lesions of the claw horn together, by block and pain relief: four rows.</summary>
    public required IReadOnlyList<TreatmentOutcomeView> ClawHorn { get; init; }

    /// <summary>What these figures cannot say.</summary>
    public required string Caution { get; init; }

    /// <summary>How judged treatments look on the wire.</summary>
    public static TreatmentsView Of(IReadOnlyCollection<JudgedTreatment> judged, Period period) => new()
    {
        From = period.From,
        To = period.To,
        JudgedAfterDays = TreatmentOutcomes.JudgedAfterDays,
        ByLesion = [.. TreatmentOutcomes.ByLesion(judged).Select(TreatmentOutcomeView.Of)],
        ClawHorn = [.. TreatmentOutcomes.OfClawHorn(judged).Select(TreatmentOutcomeView.Of)],
        Caution =
            "Cows are not drawn by lot to a treatment here: the worst feet get the most done to them. The figures describe, they do not prove; medicines are the veterinarian's to choose.",
    };
}

/// <summary>What became of the feet with one lesion and one treatment.</summary>
/// <param name="Lesion">The lesion as findings name it; null for a row over several.</param>
/// <param name="LesionInWords">The same in words; null where that is.</param>
/// <param name="Treatment">Parts joined by <c>+</c>: <c>block pain-relief dressing antibiotic</c>, or <c>trim</c>.</param>
/// <param name="TreatmentInWords">The same in words.</param>
/// <param name="Treated">How many feet were treated so.</param>
/// <param name="Sound">How many of those that could be judged were sound at 35 days.</param>
/// <param name="ToRecovery">Days until recovery was shown.</param>
/// <param name="IsEnough">Whether so many were judged that the fraction says something.</param>
/// <param name="Sentence">In plain words.</param>
public sealed record TreatmentOutcomeView(
    string? Lesion, string? LesionInWords, string Treatment, string TreatmentInWords, int Treated, ProportionView Sound, WaitingView ToRecovery, bool IsEnough, string Sentence)
{
    /// <summary>How an outcome looks on the wire.</summary>
    public static TreatmentOutcomeView Of(TreatmentOutcome outcome) => new(
        outcome.Lesion?.WireName(), outcome.Lesion?.InWords(), outcome.Treatment.WireName(), outcome.Treatment.InWords(), outcome.Treated,
        ProportionView.OfCount(outcome.Sound), WaitingView.OfCurve(outcome.ToRecovery), outcome.IsEnough, outcome.Sentence);
}
