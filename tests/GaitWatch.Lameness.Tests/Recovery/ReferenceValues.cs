using System.Runtime.CompilerServices;
using System.Text.Json;

namespace GaitWatch.Lameness.Tests;

/// <summary>Values in Reference/reference.json, made by the script beside it with scipy 1.10.1.</summary>
internal static class ReferenceValues
{
    public static JsonElement Of(string part) => Read().GetProperty(part);

    public static double[] Numbers(this JsonElement element, string name) => [.. element.GetProperty(name).EnumerateArray().Select(value => value.GetDouble())];

    public static double Number(this JsonElement element, string name) => element.GetProperty(name).GetDouble();

    private static JsonElement Read([CallerFilePath] string here = "") =>
        JsonDocument.Parse(File.ReadAllText(Path.Combine(Path.GetDirectoryName(here)!, "Reference", "reference.json"))).RootElement;
}
