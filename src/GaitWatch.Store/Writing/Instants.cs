using System.Globalization;
using GaitWatch.Gait;

namespace GaitWatch.Store;

/// <summary>Instants and tags as the numbers the tables keep.</summary>
internal static class Instants
{
    public static long ToMs(this DateTimeOffset instant) => instant.ToUnixTimeMilliseconds();

    public static DateTimeOffset FromMs(this long ms) => DateTimeOffset.FromUnixTimeMilliseconds(ms);

    public static DateTimeOffset? FromMs(this long? ms) => ms is { } value ? value.FromMs() : null;

    public static Eid ToEid(this long value) => Eid.Parse(value.ToString("D15", CultureInfo.InvariantCulture));

    public static Eid? ToEid(this long? value) => value is { } some ? some.ToEid() : null;
}
