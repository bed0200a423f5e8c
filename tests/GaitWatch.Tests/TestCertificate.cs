using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;

namespace GaitWatch.Tests;

/// <summary>A certificate for this machine, made on the spot.</summary>
internal static class TestCertificate
{
    public static void Write(string folder, string certificateFile, string keyFile, DateTimeOffset ends)
    {
        using var key = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        var request = new CertificateRequest("CN=localhost", key, HashAlgorithmName.SHA256);
        var names = new SubjectAlternativeNameBuilder();
        names.AddIpAddress(System.Net.IPAddress.Loopback);
        request.CertificateExtensions.Add(names.Build());
        using var certificate = request.CreateSelfSigned(ends.AddDays(-60), ends);
        File.WriteAllText(Path.Combine(folder, certificateFile), certificate.ExportCertificatePem());
        File.WriteAllText(Path.Combine(folder, keyFile), key.ExportPkcs8PrivateKeyPem());
    }
}
