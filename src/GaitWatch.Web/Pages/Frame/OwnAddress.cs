namespace GaitWatch.Web;

/// <summary>Where a form leads back to: only ever a page of our own.</summary>
internal static class OwnAddress
{
    /// <summary>The address if it is a path of this service, else another.</summary>
    public static string Or(string address, string other) =>
        address.StartsWith('/') && !address.StartsWith("//", StringComparison.Ordinal) && !address.Any(c => char.IsControl(c) || c is '\\' or ' ' || c > '~')
            ? address
            : other;
}
