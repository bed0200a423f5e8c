namespace GaitWatch.Herd;

/// <summary>Which findings make a cow lame, so that an alert on that leg was right. Common practice, no source.</summary>
public static class LameLesion
{
    /// <summary>Whether a finding explains an alert on its leg.</summary>
    public static bool Explains(Finding finding) =>
        finding.Lesion is Lesion.ForeignBody or Lesion.SoleUlcer or Lesion.BulbUlcer or Lesion.ToeUlcer or Lesion.Ulcer or Lesion.ToeNecrosis
            or Lesion.WhiteLineAbscess or Lesion.ThinSole or Lesion.InterdigitalPhlegmon or Lesion.CoronetOrBulbSwelling
        || finding.ForeignBody is not null
        || finding is { Lesion: Lesion.DigitalDermatitis, MStage: { } stage } && stage.IsActive()
        || finding is
        {
            Severity: 3,
            Lesion: Lesion.WhiteLineFissure or Lesion.WhiteLineDisease or Lesion.SoleHaemorrhage or Lesion.CircumscribedSoleHaemorrhage or Lesion.DiffuseSoleHaemorrhage,
        }
        || IsAboveFoot(finding);

    /// <summary>Whether the trouble sits above the foot.</summary>
    public static bool IsAboveFoot(Finding finding) =>
        finding.Signs.Contains(VetSign.SwellingAboveClaw) || finding.Signs.Contains(VetSign.LameNothingInFoot);
}
