using GaitWatch.Herd;

namespace GaitWatch.Store;

/// <summary>One month of the herd.</summary>
/// <param name="Month">The farm's month, by its first day.</param>
/// <param name="NewCases">Feet found with what makes a cow lame that did not have it before.</param>
/// <param name="Flags">Flags raised.</param>
/// <param name="OnsetToChute">Days from onset to foot in hand, of those flags.</param>
/// <param name="Recovered">Of the feet treated in it that could be judged, how many were sound at 35 days.</param>
public sealed record HerdMonthView(DateOnly Month, int NewCases, int Flags, WaitingView OnsetToChute, ProportionView Recovered)
{
    /// <summary>How a month looks on the wire.</summary>
    public static HerdMonthView Of(HerdMonth month) => new(
        month.Month, month.NewCases, month.Flags, WaitingView.OfCurve(month.OnsetToChute), ProportionView.OfCount(month.Recovered));
}
