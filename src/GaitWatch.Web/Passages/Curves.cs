using GaitWatch.Gait;
using GaitWatch.Store;

namespace GaitWatch.Web;

/// <summary>Finds a passage's force curves again in the frames that are kept.</summary>
internal static class Curves
{
    // A device sends at least half a second of empty plate before and after a crossing; cows that follow closely may load it longer.
    private static readonly TimeSpan[] Margins = [TimeSpan.FromSeconds(5), TimeSpan.FromSeconds(60), TimeSpan.FromMinutes(5)];

    public static async Task<(CurvesView? Curves, Refusal? Refused)> ReadAsync(BarnStore store, GaitOptions options, string id, CancellationToken cancellation)
    {
        if (await store.Reader.PassageAsync(id, cancellation) is not { } passage)
            return (null, Refusal.NotFound("id", $"id is '{id}': no passage has it; GET /api/passages lists those that are."));
        if (PassageId.Of(passage.Platform, passage.StartedAt) != passage.Id)
            return (null, NoCurves(id, "the device summed this passage up itself and sent no samples, so that there is no curve; only crossings analysed from frames have one."));
        if (store.Options.Platforms.FirstOrDefault(platform => platform.Id == passage.Platform) is not { } plate)
            return (null, NoCurves(id, $"platform '{passage.Platform}' is not set up any more, so that its frames cannot be read; add it to GaitWatch:Platforms."));

        var analyser = new CrossingAnalyser(plate, options);
        var anyFrames = false;
        foreach (var margin in Margins)
        {
            var frames = await store.Reader.FramesAsync(plate.Id, plate.Cells.Length, passage.StartedAt - margin, passage.EndedAt + margin, cancellation);
            anyFrames |= frames.Any(frame => frame.T0 <= passage.EndedAt && frame.End >= passage.StartedAt);
            if (frames.Count == 0)
                continue;
            var crossing = analyser.Analyse(frames).Crossings.FirstOrDefault(c => PassageId.Of(plate.Id, c.FirstContact) == passage.Id);
            if (crossing is not null)
                return (View(passage, plate, crossing), null);
        }

        return (null, NoCurves(id, anyFrames
            ? "its frames no longer give this crossing: late frames are being analysed, or part of them has been removed; ask again in a minute."
            : "its frames have been removed: they are kept for GaitWatch:FrameRetentionDays only."));
    }

    private static Refusal NoCurves(string id, string why) => Refusal.NotFound("id", $"id is '{id}': {why}");

    private static CurvesView View(PassageView passage, TwinPlate plate, Crossing crossing) => new(
        passage.Id, passage.Platform, passage.Cow, passage.StartedAt, plate.PlateLengthMetres,
        [.. crossing.Footfalls.Select(f => new FootfallView(f.Leg.WireName(), f.Contact, f.Lift, f.X, f.IsWhole, f.CurveHz, [.. f.CurveKg.Select(kg => Math.Round(kg, 2))]))]);
}
