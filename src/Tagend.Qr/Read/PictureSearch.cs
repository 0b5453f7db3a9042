namespace Tagend.Qr.Read;

/// <summary>Looks for codes in one picture, in ways that cost ever more.</summary>
internal sealed class PictureSearch(PicturePyramid pyramid, PixelBudget budget, SymbolDecoder decoder)
{
    /// <summary>Of the threes of finder patterns in one pass, those nearest to a square.</summary>
    private const int TriplesInPass = 120;

    /// <summary>Of those, the most that are read.</summary>
    private const int ReadInPass = 24;

    /// <summary>Three finder patterns that promise less are three other things.</summary>
    private const float LeastPromise = 0.4f;

    /// <summary>The same where one is a guess.</summary>
    private const float LeastPromiseOfGuess = 0.75f;

    /// <summary>What a square seen straight on is worth against the promise.</summary>
    private const float OddnessWeight = 0.3f;

    /// <summary>A three that could not be read is not tried again more than so often.</summary>
    private const int Tries = 2;

    private readonly List<FoundCode> _found = [];
    private readonly List<FinderTriple> _read = [];
    private readonly List<(FinderTriple Triple, bool Inverted)> _tried = [];
    private readonly Lazy<PicturePyramid> _inverted = new(() => new PicturePyramid(pyramid.Level(0).Inverted()));

    public IReadOnlyCollection<FoundCode> Codes()
    {
        foreach (var round in ReadingPass.All.GroupBy(p => p.Round))
        {
            foreach (var pass in round)
            {
                Look(pass);
            }

            if (_found.Count > 0 || budget.IsSpent)
            {
                break;
            }
        }

        return _found;
    }

    private void Look(ReadingPass pass)
    {
        var inverted = pass.Treatment == Treatment.Inverted;
        var seen = inverted ? _inverted.Value : pyramid;
        if (pass.LevelIn(pyramid) is not { } level || seen.Level(level).Area > budget.Left)
        {
            return;
        }

        var picture = Treated(seen.Level(level), pass.Treatment);
        budget.Spend(picture.Area);
        var scale = (float)pyramid.Level(0).Width / picture.Width;
        var finders = FinderScan.Find(BinaryImage.Of(picture, pass.Radius)).Select(f => f.Scaled(scale)).ToList();
        var reader = new SymbolReader(seen, budget, decoder);
        var triples = pass.Guesses ? FinderTriple.Guesses(finders) : FinderTriple.Among(finders).Take(TriplesInPass);
        var promising = triples
            .Select(t => (Triple: t, Promise: reader.Promise(t)))
            .Where(t => t.Promise > (pass.Guesses ? LeastPromiseOfGuess : LeastPromise))
            .OrderByDescending(t => t.Promise - (OddnessWeight * t.Triple.Oddness))
            .Select(t => t.Triple)
            .Take(ReadInPass)
            .ToList();
        foreach (var triple in promising)
        {
            if (budget.IsSpent || IsUsed(triple) || _tried.Count(t => t.Inverted == inverted && t.Triple.IsSameAs(triple)) >= Tries)
            {
                continue;
            }

            _tried.Add((triple, inverted));
            if (reader.Read(triple) is { } text)
            {
                _read.Add(triple);
                _found.Add(new FoundCode(text, triple.Corners));
            }
        }
    }

    private bool IsUsed(FinderTriple triple) =>
        _read.Any(r => r.Uses(triple.Corner) || r.Uses(triple.Right) || r.Uses(triple.Below));

    private static GrayPicture Treated(GrayPicture picture, Treatment treatment) => treatment switch
    {
        Treatment.Smoothed => picture.Smoothed(1),
        Treatment.Sharpened => picture.Sharpened(4, 1.5f),
        Treatment.Doubled => picture.Doubled(),
        _ => picture,
    };
}
