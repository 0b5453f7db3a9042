namespace Tagend.Jobs;

/// <summary>All wording about a job book that cannot be used, so that tests can hold it.</summary>
internal static class JobWording
{
    public static string Later(string path, long version, int known) =>
        $"{path}: the job book has version {version}, and this program knows versions to {known}: use the later Tagend that wrote it; nothing in the book was changed";

    public static string NoBook(string path) => $"{path}: is not a job book; move this file away, or use another one";

    public static string Busy(string path) =>
        $"{path}: another program is using the job book; wait for it to finish, then run this again";

    public static string Damaged(string path, string reason) =>
        $"{path}: the job book is damaged ({reason}); keep this file, and go on with the latest copy of it or a new one";

    public const string NoSuchValue = "a row has a value that none can have there";

    public static string Empty(string path) =>
        $"{path}: the file is empty, so it is not a job book, perhaps a copy that was cut off; put a complete copy in its place, or remove it and the next print starts a new book";

    public static string NotAsItsTag(string order, string piece, int revision) =>
        $"the job book is damaged: its values for {order}/{piece}, revision {revision}, differ from its tag; keep this book, and go on with the latest copy of it or a new one";

    public static string ReadOnly(string path) => $"{path}: the job book cannot be written; check the permissions of the file and its folder";

    public static string CannotOpen(string path) =>
        $"{path}: the job book cannot be opened; see that its folder is there and that you may write to it";

    public static string DiskFull(string path) => $"{path}: the disk of the job book is full; free some space and run again";

    public static string DiskFails(string path) =>
        $"{path}: the disk of the job book does not read or write; see whether it is full or broken, then run again";

    public static string Failed(string path, string reason) => $"{path}: the job book cannot be used ({reason}); try again, or use another file";

    public static string NotEmpty(string target) =>
        $"{target}: there are already jobs in this book, and a copy needs an empty one; name another place";

    public static string CopyDiffers(string table) =>
        $"a row of {table} did not read back as it was written, so nothing was copied; check the disk and memory of both machines";

    public static string NoOrder(string order) => $"there is no order {order} in the job book: check the number";

    public static string NoPiece(string order, string piece, IEnumerable<string> pieces) =>
        $"there is no piece {piece} of order {order} in the job book; it has {string.Join(", ", pieces)}";

    public static string IsStruck(long number) =>
        $"build {number} was struck or corrected earlier and no longer counts: see which build of the piece stands now";

    public static string NoSpool(long number) => $"there is no spool {number} in the job book: check the number, or scan its tag";

    public static string NoBuild(long number) => $"there is no build {number} in the job book: check the number";
}
