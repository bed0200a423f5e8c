using System.Collections.Immutable;
using InfluxDB.Client.Api.Domain;
using InfluxDB.Client.Writes;

namespace GaitWatch.Store;

/// <summary>Puts a point together. A field without a value is left out; escaping is the client library's.</summary>
internal sealed class PointBuilder
{
    /// <summary>The value of a tag of which nothing is known: every point of a measurement carries the same tags, so that one can be named exactly.</summary>
    public const string Unknown = "unknown";

    private readonly PointData.Builder _data;
    private readonly string _measurement;
    private readonly long _at;
    private readonly ImmutableArray<SeriesTag>.Builder _tags = ImmutableArray.CreateBuilder<SeriesTag>();
    private readonly ImmutableArray<string>.Builder _fields = ImmutableArray.CreateBuilder<string>();

    public PointBuilder(string measurement, long atMs, string farm)
    {
        _measurement = measurement;
        _at = atMs;
        _data = PointData.Builder.Measurement(measurement).Timestamp(atMs, WritePrecision.Ms);
        Tag("farm", farm);
    }

    public PointBuilder Tag(string name, string? value)
    {
        // The line protocol knows no line break, and a backslash at a tag's end would swallow what follows.
        var text = string.IsNullOrWhiteSpace(value) ? Unknown : value.Trim().ReplaceLineEndings(" ").Replace('\\', '/');
        _tags.Add(new SeriesTag(name, text));
        _data.Tag(name, text);
        return this;
    }

    public PointBuilder Field(string name, double? value)
    {
        // Line protocol has no word for what is not a number.
        if (value is not { } number || !double.IsFinite(number))
            return this;
        _fields.Add(name);
        _data.Field(name, number);
        return this;
    }

    public PointBuilder Field(string name, long? value)
    {
        if (value is not { } number)
            return this;
        _fields.Add(name);
        _data.Field(name, number);
        return this;
    }

    public PointBuilder Field(string name, bool value) => Field(name, value ? 1L : 0L);

    public PointBuilder Field(string name, string? value)
    {
        if (string.IsNullOrWhiteSpace(value))
            return this;
        _fields.Add(name);
        // A record of the outbox holds a line a point.
        _data.Field(name, value.Trim().ReplaceLineEndings(" "));
        return this;
    }

    /// <summary>The point; it must have a field.</summary>
    public SeriesPoint Build()
    {
        _tags.Sort((a, b) => string.CompareOrdinal(a.Name, b.Name));
        return new SeriesPoint(_measurement, _at, _tags.ToImmutable(), _fields.ToImmutable(), _data.ToPointData().ToLineProtocol(null));
    }
}
