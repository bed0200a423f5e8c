using System.Collections.Immutable;

namespace GaitWatch;

/// <summary>Where the pages and the API listen.</summary>
internal sealed record HttpSettings
{
    /// <summary>Addresses such as <c>http://127.0.0.1:8080</c>; <c>*</c> as the host means every address of the machine.</summary>
    public required ImmutableArray<string> Urls { get; init; }

    /// <summary>Addresses at which nothing answers but share links; empty: they answer at <see cref="Urls"/>.</summary>
    public ImmutableArray<string> ShareUrls { get; init; } = [];

    /// <summary>What share links begin with; null: as the service was reached when one was made.</summary>
    public Uri? ShareAddress { get; init; }

    /// <summary>Full path of the PEM file with the certificate; null when there is none.</summary>
    public string? Certificate { get; init; }

    /// <summary>Full path of the PEM file with its key; null when the key stands in the certificate's file.</summary>
    public string? CertificateKey { get; init; }
}
