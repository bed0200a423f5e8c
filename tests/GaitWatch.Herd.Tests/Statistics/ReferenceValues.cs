using System.Runtime.CompilerServices;
using System.Text.Json;

namespace GaitWatch.Herd.Tests;

/// <summary>Values in Reference/reference.json, made by the script beside it with scipy 1.10.1.</summary>
internal static class ReferenceValues
{
    public static IEnumerable<JsonElement> Of(string part) => Read().GetProperty(part).EnumerateArray();

    private static JsonElement Read([CallerFilePath] string here = "") =>
        JsonDocument.Parse(File.ReadAllText(Path.Combine(Path.GetDirectoryName(here)!, "Reference", "reference.json"))).RootElement;
}
