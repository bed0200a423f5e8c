using System.Net;
using System.Net.Sockets;
using System.Security.Cryptography.X509Certificates;

namespace GaitWatch;

/// <summary>Whether the pages' addresses are free, or the service there answers, and how long the certificate holds.</summary>
internal static class PagesCheck
{
    private const string What = "pages";

    /// <summary>Looks at the addresses when no service runs there.</summary>
    public static IEnumerable<CheckLine> Free(HttpSettings http) => http.Urls.Concat(http.ShareUrls).Select(FreeAt);

    /// <summary>Looks at the certificate; none is no fault.</summary>
    public static IEnumerable<CheckLine> Certificate(HttpSettings http, DateTimeOffset now)
    {
        if (http.Certificate is not { } file)
            yield break;
        using var certificate = X509CertificateLoader.LoadCertificateFromFile(file);
        var ends = new DateTimeOffset(certificate.NotAfter.ToUniversalTime(), TimeSpan.Zero);
        yield return (ends - now).TotalDays switch
        {
            < 0 => CheckLine.Fault(What, $"The certificate {file} ended on {ends:yyyy-MM-dd}.", "Renew it: phones will not open the pages."),
            < 14 => CheckLine.Notice(What, $"The certificate {file} ends on {ends:yyyy-MM-dd}.", "Renew it."),
            _ => CheckLine.Ok(What, $"The certificate {file} holds until {ends:yyyy-MM-dd}."),
        };
    }

    private static CheckLine FreeAt(string url)
    {
        var address = BindingAddress.Parse(url);
        var at = address.Host switch
        {
            "localhost" => IPAddress.Loopback,
            _ when IPAddress.TryParse(address.Host.Trim('[', ']'), out var own) => own,
            _ => IPAddress.IPv6Any,
        };
        try
        {
            using var listener = new TcpListener(at, address.Port);
            if (at.Equals(IPAddress.IPv6Any))
                listener.Server.DualMode = true;
            listener.Start();
            return CheckLine.Ok(What, $"{url} is free.");
        }
        catch (SocketException e)
        {
            return CheckLine.Fault(
                What, $"{url} cannot be listened at: {e.Message}.",
                e.SocketErrorCode == SocketError.AddressAlreadyInUse
                    ? "Another program holds the port: stop it, or set GaitWatch:Http:Urls to another."
                    : "Set GaitWatch:Http:Urls to an address of this machine and a port this user may open.");
        }
    }
}
