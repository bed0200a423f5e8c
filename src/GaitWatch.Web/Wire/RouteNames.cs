namespace GaitWatch.Web;

/// <summary>Names of cows and the like as they stand in a path.</summary>
internal static class RouteNames
{
    /// <summary>A name from a path: the server leaves an encoded slash as it is, lest it part the path.</summary>
    public static string Read(string value) => value.Replace("%2F", "/", StringComparison.OrdinalIgnoreCase);

    /// <summary>A name for a path.</summary>
    public static string Write(string name) => Uri.EscapeDataString(name);
}
