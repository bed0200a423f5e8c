using System.Globalization;

namespace GaitWatch.Gait;

/// <summary>The id of a passage analysed here: platform and first contact, so that an analysis made again names it alike.</summary>
public static class PassageId
{
    /// <summary>Such as <c>parlour-exit.20260302T051407250Z</c>.</summary>
    public static string Of(string platform, DateTimeOffset firstContact) =>
        string.Create(CultureInfo.InvariantCulture, $"{platform}.{firstContact.UtcDateTime:yyyyMMdd'T'HHmmssfff'Z'}");
}
