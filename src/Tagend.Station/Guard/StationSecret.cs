using System.Buffers.Text;
using System.Security.Cryptography;
using System.Text;
using Tagend.Output;
using Tagend.Problems;

namespace Tagend.Station.Guard;

/// <summary>A number that only this station knows. It is kept in a file that nobody else may read.</summary>
internal sealed class StationSecret
{
    private const int Bytes = 32;

    private readonly byte[] _key;

    private StationSecret(byte[] key) => _key = key;

    /// <summary>Reads the secret in a folder, or makes it.</summary>
    /// <exception cref="TagendException">It cannot be read or written.</exception>
    public static StationSecret In(string folder)
    {
        var path = Path.Combine(folder, "secret");
        try
        {
            if (File.Exists(path) && File.ReadAllBytes(path) is { Length: Bytes } known)
            {
                return new StationSecret(known);
            }

            var key = RandomNumberGenerator.GetBytes(Bytes);
            AtomicFiles.Write([new NewFile(path, stream => stream.Write(key)) { IsSecret = true }]);
            return new StationSecret(key);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new TagendException($"{path}: cannot be read ({SystemReason.Of(e)}); the station keeps its secret there: see that this folder is yours", e);
        }
    }

    /// <summary>What only this station can say of a text (HMAC, RFC 2104, with SHA-256).</summary>
    public string Seal(string text) => Base64Url.EncodeToString(HMACSHA256.HashData(_key, Encoding.UTF8.GetBytes(text)));
}
