namespace GaitWatch.Lameness;

/// <summary>
/// The four legs' shares as log-ratio balances: an orthogonal description of a composition with three degrees of freedom, in
/// which distances mean what they should and from which shares map back without ever leaving 0 to 1.
/// </summary>
/// <remarks>Source: Egozcue J.J. et al. 2003, Math Geol 35:279-300 (isometric log-ratio). No unit; sound cows lie within a few tenths of 0.</remarks>
/// <param name="ForeHind">ln( sqrt(lf rf) / sqrt(lh rh) ): weight carried in front against behind.</param>
/// <param name="Fore">sqrt(1/2) ln(lf / rf): left against right in front.</param>
/// <param name="Hind">sqrt(1/2) ln(lh / rh): left against right behind.</param>
public readonly record struct Balances(double ForeHind, double Fore, double Hind);
