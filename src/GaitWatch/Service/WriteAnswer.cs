using System.Text.Json;

namespace GaitWatch;

/// <summary>The answer to a write that is safe in the store but that the analysis has not come to yet.</summary>
internal static class WriteAnswer
{
    /// <summary>Tells of it.</summary>
    /// <returns>False when the answer is of another kind and was not told.</returns>
    public static bool TellStored(CommandContext context, string answer)
    {
        using var document = JsonDocument.Parse(answer);
        if (document.RootElement.ValueKind != JsonValueKind.Object
            || !document.RootElement.TryGetProperty("stored", out var stored) || stored.ValueKind != JsonValueKind.String)
            return false;
        context.Out.WriteLine(stored.GetString());
        return true;
    }
}
