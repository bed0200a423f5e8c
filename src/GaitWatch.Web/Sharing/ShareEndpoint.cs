namespace GaitWatch.Web;

/// <summary>Where nothing answers but share links.</summary>
/// <param name="Scheme"><c>http</c> or <c>https</c>.</param>
/// <param name="Port">The TCP port.</param>
public sealed record ShareEndpoint(string Scheme, int Port);
