using System.Text.Json.Serialization;
using GaitWatch.Lameness;

namespace GaitWatch.Herd;

/// <summary>
/// Something a person entered. Writes are inputs like messages: kept for good, bound to cow and instant, and folded in event
/// time, so that the same messages and writes always give the same state.
/// </summary>
/// <param name="At">The instant it is about or, where none was given, of its arrival.</param>
[JsonPolymorphic(TypeDiscriminatorPropertyName = "write")]
[JsonDerivedType(typeof(RegisterWrite), "register")]
[JsonDerivedType(typeof(CloseAlertWrite), "close-alert")]
[JsonDerivedType(typeof(VisitWrite), "visit")]
[JsonDerivedType(typeof(VisitMoveWrite), "visit-move")]
[JsonDerivedType(typeof(VisitCancelWrite), "visit-cancel")]
[JsonDerivedType(typeof(FindingWrite), "finding")]
[JsonDerivedType(typeof(FindingCorrectionWrite), "finding-correction")]
[JsonDerivedType(typeof(FindingWithdrawalWrite), "finding-withdrawal")]
[JsonDerivedType(typeof(FollowUpDoneWrite), "follow-up-done")]
[JsonDerivedType(typeof(TrimListHandWrite), "trim-list-hand")]
[JsonDerivedType(typeof(CalibrationWrite), "calibration")]
[JsonDerivedType(typeof(TrimListDoneWrite), "trim-list-done")]
[JsonDerivedType(typeof(TrimListMoveWrite), "trim-list-move")]
public abstract record FarmWrite(DateTimeOffset At);

/// <summary>A cow was registered, or what is known of her changed.</summary>
/// <param name="At">When it was entered.</param>
/// <param name="Registration">What holds from now on.</param>
public sealed record RegisterWrite(DateTimeOffset At, CowRegistration Registration) : FarmWrite(At);

/// <summary>An alert was closed by hand.</summary>
/// <param name="At">When.</param>
/// <param name="Closed">Cow, pattern, leg and reason.</param>
public sealed record CloseAlertWrite(DateTimeOffset At, AlertClosedByHand Closed) : FarmWrite(At);
