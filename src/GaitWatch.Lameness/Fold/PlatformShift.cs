namespace GaitWatch.Lameness;

/// <summary>How far everybody has moved together on one platform.</summary>
/// <param name="Platform">The platform.</param>
/// <param name="At">When it was last told.</param>
/// <param name="Cows">How many cows of the session it rests on.</param>
/// <param name="Movement">The common movement, balances.</param>
/// <param name="IsTrouble">Whether it is more than floor and mood explain: the platform lies, and its passages are no evidence.</param>
/// <param name="Explanation">In plain words what is seen and what to do; empty when nothing is wrong.</param>
public sealed record PlatformShift(string Platform, DateTimeOffset At, int Cows, Balances Movement, bool IsTrouble, string Explanation);
