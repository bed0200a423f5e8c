using Microsoft.AspNetCore.OpenApi;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.OpenApi;

namespace GaitWatch.Web;

/// <summary>The OpenAPI document at <c>/openapi/v1.json</c>.</summary>
internal static class ApiDocument
{
    public static void AddApiDocument(this IServiceCollection services) =>
        services.AddOpenApi("v1", options =>
        {
            options.AddDocumentTransformer((document, _, _) =>
            {
                document.Info = new OpenApiInfo
                {
                    Title = "GaitWatch",
                    Version = "v1",
                    Description =
                        "Early lameness alerts from a weigh platform. Names are camelCase, times RFC 3339 in UTC, loads kilograms as a scale reads them, "
                        + "lengths metres; a figure that could not be measured is null. Errors are RFC 9457 problem details whose member errors names each field.",
                };
                document.Servers = [];
                document.Paths["/metrics"] = Metrics();
                return Task.CompletedTask;
            });
            options.AddSchemaTransformer(ValueShapes.Describe);
            options.AddOperationTransformer(DescribeParameters);
            options.AddOperationTransformer(DescribeBodyAsync);
        });

    // Served by the host itself, not by a route of ours.
    private static OpenApiPathItem Metrics() => new()
    {
        Operations = new Dictionary<HttpMethod, OpenApiOperation>
        {
            [HttpMethod.Get] = new()
            {
                Summary = "Metrics in the Prometheus text format.",
                Responses = new OpenApiResponses
                {
                    ["200"] = new OpenApiResponse { Description = "OK", Content = new Dictionary<string, OpenApiMediaType> { ["text/plain"] = new() } },
                },
            },
        },
    };

    private static Task DescribeParameters(OpenApiOperation operation, OpenApiOperationTransformerContext context, CancellationToken cancellation)
    {
        foreach (var parameter in operation.Parameters?.OfType<OpenApiParameter>() ?? [])
        {
            if (parameter.Name is null || !ParameterDescriptions.All.TryGetValue(parameter.Name, out var known))
                continue;
            parameter.Description = known.Meaning;
            parameter.Schema = known.Shape();
        }

        return Task.CompletedTask;
    }

    private static async Task DescribeBodyAsync(OpenApiOperation operation, OpenApiOperationTransformerContext context, CancellationToken cancellation)
    {
        if (context.Description.ActionDescriptor.EndpointMetadata.OfType<BodyDescription>().FirstOrDefault() is not { } body)
            return;
        operation.RequestBody = new OpenApiRequestBody
        {
            Required = true,
            Content = new Dictionary<string, OpenApiMediaType>
            {
                [body.MediaType] = new() { Schema = await context.GetOrCreateSchemaAsync(body.Shape, null, cancellation) },
            },
        };
    }
}
