namespace Tagend.Jobs.Postgres;

/// <summary>All wording about a server's job book that cannot be used, so that tests can hold it.</summary>
internal static class ServerWording
{
    public static string Away(string address, string reason) =>
        $"{address}: the server of the job book does not answer ({reason}); check that it is running and that this machine can reach it, then try again";

    public static string Refused(string address, string reason) =>
        $"{address}: the server does not let this user in ({reason}); give the password in PGPASSWORD or .pgpass, never in the address";

    public static string NoDatabase(string address) =>
        $"{address}: the server has no such database; make it with: createdb --owner USER DATABASE";

    public static string NotPermitted(string address, string reason) =>
        $"{address}: the user may not do this in the database ({reason}); let it own the database: ALTER DATABASE … OWNER TO …";

    public static string ReadOnly(string address) =>
        $"{address}: the server is read-only, maybe a standby; name the server that takes writes";

    public static string DiskFull(string address) => $"{address}: the disk of the job book's server is full; free some space there and run again";

    public static string TooMany(string address) => $"{address}: the server has too many connections; run this again, or raise max_connections there";

    public static string NoTrigrams(string address, string reason) =>
        $"{address}: the server lacks the extension pg_trgm ({reason}); install PostgreSQL's contrib package there";
}
