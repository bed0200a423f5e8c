using System.Diagnostics;

namespace GaitWatch.Barn;

/// <summary>What the barn side tells of itself in traces.</summary>
internal static class BarnTraces
{
    private static readonly ActivitySource s_source = new("GaitWatch.Barn");

    /// <summary>A change of the derived state, from its beginning to its disposal; null when nobody listens.</summary>
    public static Activity? Change() => s_source.StartActivity("change state");
}
