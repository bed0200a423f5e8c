using GaitWatch.Gait;

namespace GaitWatch.Herd;

/// <summary>A platform was checked with a test weight. The record is kept; no reading is changed by it.</summary>
/// <param name="At">When the check ended.</param>
/// <param name="Calibration">What was read, and the verdict.</param>
/// <param name="By">Who did it.</param>
/// <param name="Note">What was seen; may be empty.</param>
public sealed record CalibrationWrite(DateTimeOffset At, PlatformCalibration Calibration, string By, string Note) : FarmWrite(At);
