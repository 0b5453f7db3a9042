using System.Buffers.Text;
using System.Security.Cryptography;
using System.Text;

namespace Tagend.Station.Guard;

/// <summary>One browser, known again by its cookie, and the token that its forms carry.</summary>
/// <param name="Id">Chosen at random; it names the browser and nobody.</param>
/// <param name="Token">Follows from the id and the station's secret, so that a page that is open lives on when the station starts anew.</param>
internal sealed record Session(string Id, string Token)
{
    private const int IdBytes = 16;

    /// <summary>That of a request which passed the gate.</summary>
    public static Session Of(HttpContext context) => (Session)context.Items[typeof(Session)]!;

    /// <summary>Finds the request's session, or begins one with its answer.</summary>
    public static Session Find(HttpContext context, StationSecret secret)
    {
        // Cookies are for all ports of a machine, and two stations may run on it.
        var name = $"tagend-{context.Request.Host.Port}";
        if (context.Request.Cookies[name] is not { } id || !IsId(id))
        {
            id = Base64Url.EncodeToString(RandomNumberGenerator.GetBytes(IdBytes));
            context.Response.Cookies.Append(name, id, new CookieOptions
            {
                HttpOnly = true,
                SameSite = SameSiteMode.Lax,
                Secure = context.Request.IsHttps,
                MaxAge = TimeSpan.FromDays(365),
                IsEssential = true,
            });
        }

        var session = new Session(id, secret.Seal($"form {id}"));
        context.Items[typeof(Session)] = session;
        return session;
    }

    public bool IsToken(string? token) =>
        token is not null && CryptographicOperations.FixedTimeEquals(Encoding.UTF8.GetBytes(token), Encoding.UTF8.GetBytes(Token));

    private static bool IsId(string text) => text.Length == Base64Url.GetEncodedLength(IdBytes) && Base64Url.IsValid(text);
}
