using Tagend.Tags;

namespace Tagend.Fuzz;

/// <summary>Order files: read, computed, written as tag texts and read back, and a paper of one set composed.</summary>
internal sealed class OrdersTarget(Corpus corpus) : ITarget
{
    public IReadOnlyList<byte[]> Tokens { get; } = Corpus.Words(
        [
            "\"", "\"\"", ",", ";", "\t", "\r\n", "\n", "\r", " ", "..", "/", ":", "sep=;\n", "\uFEFF", "\0", "é", "½", "⅛", "'", "\"", "=1+1", "@", "-", "\u202E",
            "order", "piece", "notes", "peep", "A 0..8", "B 9 1/2", "t021 black", "black:12", " mm", " in", "m", "lbf", "N", "kg", "10", "none",
            "compound-string", "yoke", "string", "hmpe-0145", "60 1/4", "../../x", "CON", "aux.", "-1", "1e9",
        ]);

    public bool Run(Mutation mutation)
    {
        var report = Corpus.Read(mutation.Of(corpus.Orders), corpus.Catalog);
        Corpus.Hold(report.Problems);
        foreach (var spec in report.Pieces.Select(p => p.Spec).OfType<Specs.BuildSpec>())
        {
            // A text that no code holds is refused by every paper, and by the reader.
            var text = TagWriter.Write(spec);
            var isRight = TagReader.Read(text) is var read && text.Length > TagReader.LongestText
                ? read is TagReading.Foreign
                : read is TagReading.Piece piece && piece.Spec == spec;
            if (!isRight)
            {
                throw new FaultException($"the tag of {spec.Order}/{spec.Piece} gives another spec");
            }
        }

        if (report.MakeSets().Count > 0)
        {
            new Papers(corpus.Fonts, mutation).OfOrder(mutation.Pick(report.MakeSets()), corpus.Catalog);
        }

        return report.Problems.Count == 0;
    }

    public void Dispose()
    {
    }
}
