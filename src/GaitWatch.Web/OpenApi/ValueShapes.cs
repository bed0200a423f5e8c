using Microsoft.AspNetCore.OpenApi;
using Microsoft.OpenApi;

namespace GaitWatch.Web;

/// <summary>Says the types of values that the contract writes in its own way, instants and figures, which the document's maker cannot see.</summary>
internal static class ValueShapes
{
    public static Task Describe(OpenApiSchema schema, OpenApiSchemaTransformerContext context, CancellationToken cancellation)
    {
        var type = context.JsonTypeInfo.Type;
        Describe(schema, type);
        var item = type.IsArray ? type.GetElementType() : type.IsGenericType && type.GetInterfaces().Append(type).Any(i => i == typeof(IEnumerable<double>)) ? typeof(double) : null;
        if (item is not null && schema.Items is null or { Type: null } && Of(item) is not null)
        {
            var items = new OpenApiSchema();
            Describe(items, item!);
            schema.Items = items;
        }

        return Task.CompletedTask;
    }

    private static void Describe(OpenApiSchema schema, Type type)
    {
        if (Of(type) is not { } shape)
            return;
        schema.Type = Nullable.GetUnderlyingType(type) is null ? shape.Type : shape.Type | JsonSchemaType.Null;
        schema.Format = shape.Format;
    }

    private static (JsonSchemaType Type, string Format)? Of(Type type) => (Nullable.GetUnderlyingType(type) ?? type) switch
    {
        var t when t == typeof(double) => (JsonSchemaType.Number, "double"),
        var t when t == typeof(DateTimeOffset) => (JsonSchemaType.String, "date-time"),
        _ => null,
    };
}
