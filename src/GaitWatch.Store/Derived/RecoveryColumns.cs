using GaitWatch.Lameness;

namespace GaitWatch.Store;

/// <summary>A recovery as it is kept: its days apart, for a list over the herd needs none of them.</summary>
internal static class RecoveryColumns
{
    public static string Body(RecoveryAssessment recovery) => StoreJson.Write(recovery with { Days = [] });

    public static string Days(RecoveryAssessment recovery) => StoreJson.Write(recovery.Days);

    public static RecoveryAssessment Read(string body) => StoreJson.Read<RecoveryAssessment>(body);

    public static RecoveryAssessment Read(string body, string days) => Read(body) with { Days = [.. StoreJson.Read<DailyDrop[]>(days)] };
}
