using System.Globalization;
using System.IO.Hashing;
using System.Text;
using Tagend.Measures;
using Tagend.Orders;
using Tagend.Specs;
using Tagend.Tags;
using Tagend.Workshop.Json;
using Tagend.Workshop.Readings;

namespace Tagend.Fuzz;

/// <summary>
/// Tag texts. What is accepted is one of the real specs. Half of the texts get a check that fits, as a forged tag has: what
/// is accepted of those must come back the same when written again, and be composed.
/// </summary>
internal sealed class TagsTarget(Corpus corpus) : ITarget
{
    private const string CheckMark = "*E";

    /// <summary>For people, before the text that is checked.</summary>
    private const string Words = "BOWSTRING ";

    private readonly HashSet<BuildSpec> _real = [.. corpus.Sets.SelectMany(s => s.Builds).Select(b => b.Spec)];

    private readonly IReadOnlyList<byte[]> _texts = Corpus.Words(
        corpus.Sets.SelectMany(s => s.Builds.Select(b => TagWriter.Write(b.Spec)).Append(TagWriter.Write(s)).Append(TagWriter.WriteContents(s))));

    public IReadOnlyList<byte[]> Tokens { get; } = Corpus.Words(
        [
            "TE1*", "TB1*", "TE2*", "TB2*", "TE3*", "BOWSTRING ", "*", "/", "+", "$", "%", "%20", "%00", "%FF", "%C3%A9", "%2F", "*E", "IN", "MM", "I", "M", "N", "L", "R", "H", "F", "/C", "/A",
            "0", "1", ".", "999999", "1000000", ".0000001", "20260314", "00010101", "99991231", "STRING", "HMPE-0145", "COMPOUND-STRING", "\n", "(", "-",
        ]);

    public bool Run(Mutation mutation)
    {
        var text = Encoding.UTF8.GetString(mutation.Of(_texts));
        var isForged = mutation.OneIn(2);
        var reading = TagReader.Read(isForged ? string.Join('$', text.Split('$').Select(Checked)) : text);
        IReadOnlyList<BuildSpec> specs = reading switch
        {
            TagReading.Piece piece => [piece.Spec],
            TagReading.Bag bag => [.. bag.Specs],
            _ => [],
        };
        foreach (var spec in specs)
        {
            if (!isForged && !_real.Contains(spec))
            {
                throw new FaultException($"no check has caught {text}");
            }

            if (TagReader.Read(TagWriter.Write(spec)) is not TagReading.Piece again || again.Spec != spec)
            {
                throw new FaultException($"written again it is another spec: {text}");
            }
        }

        if (isForged && specs.Count > 0)
        {
            JsonList.Write(Stream.Null, [new TagScan("text", reading)]);
            new Papers(corpus.Fonts, mutation).OfForged(
                new BuildSet(specs[0].Order, specs.Select(s => new Build(s, OrderSlip.Blank)).ToValueList()), corpus.Catalog);
        }

        return reading is TagReading.Piece or TagReading.Bag;
    }

    public void Dispose()
    {
    }

    /// <summary>With the check that fits it in the place of its own.</summary>
    private static string Checked(string text)
    {
        var end = text.LastIndexOf(CheckMark, StringComparison.Ordinal);
        var body = (end < 0 ? text : text[..end]).TrimStart();
        var words = body.StartsWith(Words, StringComparison.Ordinal) ? Words : "";
        return body + CheckMark + Crc32.HashToUInt32(Encoding.UTF8.GetBytes(body[words.Length..])).ToString("X8", CultureInfo.InvariantCulture);
    }
}
