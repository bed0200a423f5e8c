using System.Text.Json;
using System.Text.Json.Serialization;

namespace GaitWatch.Web;

/// <summary>
/// Writes figures with at most six decimals: a share's standard error is about 0.001, so that nothing measured is lost, and an
/// answer stays readable. What is no number is null, as the contract wants for what could not be measured.
/// </summary>
internal sealed class WireNumbers : JsonConverter<double>
{
    private const int Decimals = 6;

    public override double Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) => reader.GetDouble();

    public override void Write(Utf8JsonWriter writer, double value, JsonSerializerOptions options)
    {
        if (double.IsFinite(value))
            writer.WriteNumberValue(Math.Round(value, Decimals));
        else
            writer.WriteNullValue();
    }
}
