using System.Globalization;
using Npgsql;
using Tagend.Jobs;
using Tagend.Jobs.Postgres;
using Tagend.Jobs.Sqlite;
using Tagend.Problems;

namespace Tagend.Addresses;

/// <summary>Reads where a job book is.</summary>
public static class JobBookAddressReader
{
    private const string Server = "postgres://";

    private const string Form = "postgres://USER@HOST/DATABASE, or postgres://USER@/DATABASE?host=FOLDER with the folder of the server's socket";

    /// <param name="text">A file's path, or <c>postgres://USER@HOST:PORT/DATABASE</c>; <c>?host=FOLDER</c> names the server's socket.</param>
    /// <exception cref="TagendException">
    /// The text would name no file that stays (SQLite's memory, or its own way to write paths), or it is no server's address.
    /// </exception>
    public static JobBookAddress Read(string text) => text switch
    {
        ":memory:" => throw new TagendException($"{text}: what is entered there is lost when the run ends; name a file for the job book"),
        _ when text.StartsWith("file:", StringComparison.OrdinalIgnoreCase) =>
            throw new TagendException($"{text}: expected the path of the job book's file, without \"file:\" before it"),
        _ when text.StartsWith(Server, StringComparison.OrdinalIgnoreCase) || text.StartsWith("postgresql://", StringComparison.OrdinalIgnoreCase) =>
            ReadServer(text),
        _ => new SqliteAddress(text),
    };

    private static PostgresAddress ReadServer(string text)
    {
        var rest = text[(text.IndexOf("//", StringComparison.Ordinal) + 2)..];
        var question = rest.IndexOf('?', StringComparison.Ordinal);
        var (main, query) = question < 0 ? (rest, "") : (rest[..question], rest[(question + 1)..]);
        if (main.Split('@') is not [var user, var place] || place.Split('/') is not [var host, var database] || user.Length == 0 || database.Length == 0)
        {
            throw new TagendException($"{WithoutPassword(text)}: expected {Form}");
        }

        if (user.Contains(':', StringComparison.Ordinal))
        {
            throw new TagendException($"{WithoutPassword(text)}: a password in the address can be read by others; give it in the variable PGPASSWORD or the file .pgpass");
        }

        var server = new NpgsqlConnectionStringBuilder { Username = Uri.UnescapeDataString(user), Database = Uri.UnescapeDataString(database) };
        ReadHost(text, host, server);
        foreach (var part in query.Split('&', StringSplitOptions.RemoveEmptyEntries))
        {
            switch (part.Split('=', 2))
            {
                case ["host", var folder]:
                    server.Host = Uri.UnescapeDataString(folder);
                    break;
                case ["sslmode", var mode] when Enum.TryParse<SslMode>(mode.Replace("-", "", StringComparison.Ordinal), ignoreCase: true, out var ssl):
                    server.SslMode = ssl;
                    break;
                default:
                    throw new TagendException($"{text[..text.IndexOf('?', StringComparison.Ordinal)]}: \"{part.Split('=')[0]}\" is not understood; after the question mark there may be host= and sslmode=");
            }
        }

        return string.IsNullOrEmpty(server.Host) ? throw new TagendException($"{text}: expected {Form}") : new PostgresAddress(text, server);
    }

    private static void ReadHost(string text, string host, NpgsqlConnectionStringBuilder server)
    {
        var colon = host.LastIndexOf(':');
        var isPort = colon >= 0 && !host.EndsWith(']');
        server.Host = (isPort ? host[..colon] : host).Trim('[', ']');
        if (isPort)
        {
            server.Port = int.TryParse(host[(colon + 1)..], NumberStyles.None, CultureInfo.InvariantCulture, out var port) && port is > 0 and < 65536
                ? port
                : throw new TagendException($"{text}: \"{host[(colon + 1)..]}\": expected a port from 1 to 65535");
        }
    }

    /// <summary>For messages, whatever the text is.</summary>
    private static string WithoutPassword(string text)
    {
        var (start, at) = (text.IndexOf("//", StringComparison.Ordinal) + 2, text.LastIndexOf('@'));
        var colon = at < 0 ? -1 : text.IndexOf(':', start, at - start);
        return colon < 0 ? text : $"{text[..colon]}:…{text[at..]}";
    }
}
