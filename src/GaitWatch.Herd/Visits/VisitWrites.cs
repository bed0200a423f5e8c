namespace GaitWatch.Herd;

/// <summary>A visit was planned, or a planned one changed without moving it.</summary>
/// <param name="At">When it was entered.</param>
/// <param name="Visit">The visit.</param>
public sealed record VisitWrite(DateTimeOffset At, Visit Visit) : FarmWrite(At);

/// <summary>A visit was moved to another day.</summary>
/// <param name="At">When it was entered.</param>
/// <param name="From">The day it was planned for.</param>
/// <param name="Visit">The visit on its new day.</param>
public sealed record VisitMoveWrite(DateTimeOffset At, DateOnly From, Visit Visit) : FarmWrite(At);

/// <summary>A visit was cancelled.</summary>
/// <param name="At">When it was entered.</param>
/// <param name="Date">The day it was planned for.</param>
public sealed record VisitCancelWrite(DateTimeOffset At, DateOnly Date) : FarmWrite(At);
