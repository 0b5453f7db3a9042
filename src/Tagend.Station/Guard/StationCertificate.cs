using System.Net;
using System.Net.NetworkInformation;
using System.Net.Sockets;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;
using Tagend.Output;
using Tagend.Problems;

namespace Tagend.Station.Guard;

/// <summary>The certificate that other devices see: made by the station for the names of its machine, and kept.</summary>
internal static class StationCertificate
{
    private const string FileName = "certificate.pfx";
    private const int Days = 820;

    /// <summary>The machine's addresses in its own networks, as other devices reach it.</summary>
    public static IReadOnlyList<IPAddress> Addresses() =>
    [
        .. NetworkInterface.GetAllNetworkInterfaces()
            .Where(n => n.OperationalStatus == OperationalStatus.Up && n.NetworkInterfaceType != NetworkInterfaceType.Loopback)
            .SelectMany(n => n.GetIPProperties().UnicastAddresses)
            .Select(a => a.Address)
            .Where(a => a.AddressFamily == AddressFamily.InterNetwork),
    ];

    /// <summary>The certificate kept in a folder; a new one where it is not for all names, or is near its end.</summary>
    /// <exception cref="TagendException">It cannot be read or written.</exception>
    public static X509Certificate2 In(string folder, IReadOnlyList<IPAddress> addresses, TimeProvider clock)
    {
        var path = Path.Combine(folder, FileName);
        try
        {
            if (File.Exists(path))
            {
                var known = X509CertificateLoader.LoadPkcs12FromFile(path, null);
                if (known.NotAfter > clock.GetLocalNow().AddDays(7).DateTime && addresses.All(a => known.MatchesHostname(a.ToString())))
                {
                    return known;
                }
            }

            var bytes = Made(addresses, clock);
            AtomicFiles.Write([new NewFile(path, stream => stream.Write(bytes)) { IsSecret = true }]);
            return X509CertificateLoader.LoadPkcs12(bytes, null);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or CryptographicException)
        {
            throw new TagendException($"{path}: cannot be read or made ({(e is CryptographicException ? "it is no certificate of the station" : SystemReason.Of(e))}); delete it and start again, and the station makes a new one", e);
        }
    }

    private static byte[] Made(IReadOnlyList<IPAddress> addresses, TimeProvider clock)
    {
        using var key = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        var request = new CertificateRequest("CN=Tagend station", key, HashAlgorithmName.SHA256);
        var names = new SubjectAlternativeNameBuilder();
        names.AddDnsName("localhost");
        names.AddDnsName(Environment.MachineName);
        foreach (var address in addresses)
        {
            names.AddIpAddress(address);
        }

        request.CertificateExtensions.Add(names.Build());
        request.CertificateExtensions.Add(new X509BasicConstraintsExtension(false, false, 0, true));
        request.CertificateExtensions.Add(new X509EnhancedKeyUsageExtension([new Oid("1.3.6.1.5.5.7.3.1")], false)); // a server (RFC 5280, 4.2.1.12)
        var now = clock.GetUtcNow();
        using var made = request.CreateSelfSigned(now.AddDays(-1), now.AddDays(Days));
        return made.Export(X509ContentType.Pkcs12);
    }
}
