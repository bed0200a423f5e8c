namespace GaitWatch.Gait;

/// <summary>A contact or a lift.</summary>
/// <param name="Seconds">When.</param>
/// <param name="Group">Contacts of LF, RF, LH, RH are groups 0 to 3, their lifts 4 to 7.</param>
/// <param name="Weight">How well it is seen, 1 for one seen in full.</param>
/// <param name="Contact">The contact of the same stance; null when it was not seen.</param>
internal readonly record struct EventTime(double Seconds, int Group, double Weight, double? Contact);
