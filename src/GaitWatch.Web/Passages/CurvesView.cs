namespace GaitWatch.Web;

/// <summary>The force curves of a passage.</summary>
/// <param name="Id">The passage.</param>
/// <param name="Platform">The platform it crossed.</param>
/// <param name="Cow">Whose it is; null when nobody's.</param>
/// <param name="StartedAt">First contact.</param>
/// <param name="PlateLengthMetres">Length of the plates, metres.</param>
/// <param name="Footfalls">Every footfall found, in order of contact.</param>
internal sealed record CurvesView(
    string Id, string Platform, string? Cow, DateTimeOffset StartedAt, double PlateLengthMetres, IReadOnlyList<FootfallView> Footfalls);

/// <summary>One foot's stay on a plate.</summary>
/// <param name="Leg">Whose foot: <c>lf rf lh rh</c>.</param>
/// <param name="Contact">When it came down.</param>
/// <param name="Lift">When it left.</param>
/// <param name="X">Where it stood, metres from the entry edge.</param>
/// <param name="Whole">False when it stood partly off the plate or could not be told from another's: its figures are not used.</param>
/// <param name="Hz">Rate of the curve, Hz.</param>
/// <param name="CurveKg">Its force from contact on, kg.</param>
internal sealed record FootfallView(
    string Leg, DateTimeOffset Contact, DateTimeOffset Lift, double X, bool Whole, double Hz, IReadOnlyList<double> CurveKg);
