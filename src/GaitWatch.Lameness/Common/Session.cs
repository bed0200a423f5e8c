using System.Runtime.InteropServices;

namespace GaitWatch.Lameness;

/// <summary>What is kept of a platform's session (a stretch of crossings without a long break) once it is over or as it stands.</summary>
/// <param name="Number">Rises by one from session to session of the platform.</param>
/// <param name="Movement">The common movement that the whole session shows.</param>
/// <param name="MovementCov">Its uncertainty.</param>
/// <param name="Unrest">By what everybody's noise variance is multiplied in it: on a wet floor all walk less evenly.</param>
/// <param name="IsTrouble">Whether the platform lied in it.</param>
[StructLayout(LayoutKind.Sequential, Pack = 1)]
internal readonly record struct Session(long Number, Vector3 Movement, Matrix3 MovementCov, double Unrest, bool IsTrouble);
