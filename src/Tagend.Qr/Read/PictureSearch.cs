namespace Tagend.Qr.Read;

/// <summary>Looks for codes in one picture, in ways that cost ever more.</summary>
internal sealed class PictureSearch(PicturePyramid pyramid, PixelBudget budget, SymbolDecoder decoder)
{
    /// <summary>The most finder patterns of one pass: those with the clearest rings.</summary>
    private const int FindersInPass = 400;

    /// <summary>The same where any two are enough.</summary>
    private const int FindersOfGuesses = 24;

    /// <summary>The same where they were found by their light.</summary>
    private const int FindersMatched = 50;

    /// <summary>Looking closer at threes may take one part in so many of what is left.</summary>
    private const int ShareOfPass = 6;

    /// <summary>Three finder patterns that look less like some are three other things.</summary>
    private const float LeastPatterns = 0.4f;

    /// <summary>The same where one is a guess.</summary>
    private const float LeastPatternsOfGuess = 0.75f;

    /// <summary>What the plain pass reads at once; what has less is read only if nothing else is there.</summary>
    private const float LeastEvidence = 0.75f;

    /// <summary>Of those with less, the most that are read.</summary>
    private const int ReadUnlikely = 64;

    /// <summary>Threes of one pass that are read, the likeliest.</summary>
    private const int ReadInPass = 24;

    /// <summary>The same where they were found by their light, which texture has too.</summary>
    private const int ReadMatched = 8;

    /// <summary>Of those, one in so many is read as bent.</summary>
    private const int BentOneIn = 3;

    /// <summary>What may be spent of what is left, by what the plain passes saw and by a costly pass.</summary>
    private const float ShareOfRetry = 0.5f;

    private const float ShareOfCostly = 0.35f;

    /// <summary>Where something was read, only likely ones are worth more.</summary>
    private const float LeastEvidenceBesides = 0.8f;

    private const float LeastPatternsBesides = 0.65f;

    private const int ReadBesides = 12;

    /// <summary>In pixels: with modules of 2 to 4 pixels, half of one or all of it.</summary>
    private const float BlurUndone = 2;

    /// <summary>What hardly is anything but a finder pattern has so clear rings, and is crossed by so many rows.</summary>
    private const float VeryClearRings = 0.9f;

    private const int RowsOfClear = 4;

    /// <summary>A three that could not be read is not tried again more than so often.</summary>
    private const int Tries = 3;

    private readonly List<FoundCode> _found = [];
    private readonly List<SymbolCandidate> _unread = [];
    private readonly List<SymbolCandidate> _unlikely = [];

    /// <summary>What the plain pass saw that hardly is anything but a finder pattern.</summary>
    private readonly List<FinderPattern> _clear = [];

    /// <summary>What the plain pass saw in the level before, for of a tilted symbol one pattern may show there and the others here.</summary>
    private List<FinderPattern> _coarser = [];

    private readonly List<(FinderTriple Triple, bool Inverted)> _tried = [];
    private readonly Lazy<PicturePyramid> _inverted = new(() => new PicturePyramid(pyramid.Level(0).Inverted()));

    /// <summary>A plain look at every level, and another at what it could not read.</summary>
    public IReadOnlyCollection<FoundCode> LookPlainly()
    {
        foreach (var pass in ReadingPass.Plain(pyramid))
        {
            // Twice the size, or black for white, only where nothing is found as it is.
            if (_found.Count == 0 || pass.Treatment == Treatment.AsIs)
            {
                Look(pass, isPlain: true);
            }
        }

        Retry();
        if (_found.Count > 0 && _clear.Where(f => !IsUsed(f)).Take(2).Count() == 2)
        {
            // Beside what was read stands another code, it seems, of which one pattern is lost.
            foreach (var pass in ReadingPass.Costly.TakeWhile(p => p.Guesses))
            {
                Look(pass, isPlain: false);
            }
        }

        return _found;
    }

    /// <summary>Ever dearer ways, until one finds something.</summary>
    public IReadOnlyCollection<FoundCode> LookInCostlyWays()
    {
        foreach (var round in ReadingPass.Costly.GroupBy(p => p.Round))
        {
            if (_found.Count > 0 || budget.IsSpent)
            {
                break;
            }

            // Once something was found, edges are enough for what is beside it.
            foreach (var pass in round.Where(p => _found.Count == 0 || !p.Matched))
            {
                Look(pass, isPlain: false);
            }
        }

        return _found;
    }

    /// <summary>The plain passes, and the costly way for the likeliest alone.</summary>
    public IReadOnlyCollection<FoundCode> CodesAtAGlance()
    {
        foreach (var pass in ReadingPass.Plain(pyramid).Where(p => p.Treatment == Treatment.AsIs))
        {
            Look(pass, isPlain: true);
        }

        var likeliest = _unread.Where(c => c.Evidence > LeastEvidenceBesides && c.Patterns > LeastPatternsBesides).MaxBy(c => c.Evidence);
        if (_found.Count == 0 && likeliest is not null && !budget.IsSpent)
        {
            Keep(new SymbolReader(pyramid, budget, decoder).Read(likeliest).Code);
        }

        return _found;
    }

    /// <summary>What the plain pass could not read or thought unlikely, the likeliest first: all in the cheap way, then some in the costly one.</summary>
    private void Retry()
    {
        var reader = new SymbolReader(pyramid, budget, decoder);
        foreach (var candidate in _unlikely.OrderByDescending(c => c.Evidence).Take(_found.Count > 0 ? 0 : ReadUnlikely))
        {
            if (!budget.IsSpent && !IsUsed(candidate.Triple))
            {
                Keep(reader.ReadPlain(candidate));
            }
        }

        var hasFound = _found.Count > 0;
        var likely = _unread.Concat(hasFound ? [] : _unlikely)
            .Where(c => !hasFound || (c.Patterns > LeastPatternsBesides && c.Evidence > LeastEvidenceBesides))
            .OrderByDescending(c => c.Evidence);
        ReadCostly(reader, likely, inverted: false, Tries - 1, hasFound ? ReadBesides : ReadInPass, ShareOfRetry);
    }

    /// <summary>The costly way for some of the likeliest, then the costliest for a few of those.</summary>
    /// <param name="share">Of what is left.</param>
    private void ReadCostly(SymbolReader reader, IEnumerable<SymbolCandidate> candidates, bool inverted, int times, int most, float share)
    {
        var (bent, least) = (most / BentOneIn, budget.Left * (1 - share));
        var flat = new List<(SymbolCandidate Candidate, IReadOnlyList<ModuleGrid> Grids)>();
        foreach (var candidate in candidates)
        {
            if (budget.Left <= least || most == 0)
            {
                break;
            }

            if (!IsUsed(candidate.Triple) && MayTry(candidate.Triple, inverted, times))
            {
                most--;
                var (code, grids) = reader.Read(candidate);
                if (!Keep(code) && (grids.Count > 0 || candidate.Patterns > LeastPatternsBesides))
                {
                    flat.Add((candidate, grids));
                }
            }
        }

        foreach (var (candidate, grids) in flat.Take(bent))
        {
            if (budget.Left > least && !IsUsed(candidate.Triple))
            {
                Keep(reader.ReadBent(candidate, grids));
            }
        }
    }

    private void Look(ReadingPass pass, bool isPlain)
    {
        var inverted = pass.Treatment == Treatment.Inverted;
        var seen = inverted ? _inverted.Value : pyramid;
        if (pass.LevelIn(pyramid) is not { } level || seen.Level(level).Area > budget.Left)
        {
            return;
        }

        var picture = Treated(seen.Level(level), pass.Treatment);
        budget.Spend(picture.Area);
        var reader = new SymbolReader(seen, budget, decoder);
        if (pass.Treatment == Treatment.Deblurred)
        {
            budget.Spend(picture.Area * Deblur.Looks);
            reader = new SymbolReader(new PicturePyramid(picture, level), budget, decoder, pyramid);
        }

        var scale = (float)pyramid.Level(0).Width / picture.Width;
        budget.Spend(pass.Matched ? picture.Area * FinderMatch.Looks : 0);
        var finders = (pass.Matched ? FinderMatch.Find(picture, FindersMatched) : FinderScan.Find(BinaryImage.Of(picture, pass.Radius), pass))
            .OrderByDescending(f => f.Rings).ThenByDescending(f => f.Count).Take(FindersInPass)
            .Select(f => f.Scaled(scale))
            .Where(f => !IsUsed(f))
            .ToList();
        var (here, coarser) = (finders, isPlain ? _coarser : []);
        finders = [.. here, .. coarser.Where(c => !IsUsed(c) && !here.Exists(c.IsAt))];
        _coarser = here;
        if (isPlain && !inverted)
        {
            _clear.AddRange(here.Where(f => f.Rings >= VeryClearRings && f.Count >= RowsOfClear));
        }

        var share = budget.Left - (budget.Left / ShareOfPass);
        var candidates = (pass.Guesses ? FinderTriple.Guesses([.. finders.Take(FindersOfGuesses)]) : FinderTriple.Among(finders))
            .Where(t => !(coarser.Contains(t.Corner) && coarser.Contains(t.Right) && coarser.Contains(t.Below)))
            .TakeWhile(_ => budget.Left > share)
            .Select(t => reader.Candidate(t, pass.Guesses ? LeastPatternsOfGuess : LeastPatterns))
            .OfType<SymbolCandidate>()
            .OrderByDescending(c => c.Evidence)
            .ToList();
        if (!isPlain)
        {
            ReadCostly(reader, candidates, inverted, Tries, pass.Matched ? ReadMatched : ReadInPass, ShareOfCostly);
            return;
        }

        foreach (var candidate in candidates)
        {
            if (budget.IsSpent)
            {
                return;
            }

            var isLikely = candidate.Evidence >= LeastEvidence;
            if (!IsUsed(candidate.Triple) && !(isLikely && Keep(reader.ReadPlain(candidate))) && !inverted)
            {
                // The costly rounds look for what is white on black themselves.
                (isLikely ? _unread : _unlikely).Add(candidate);
            }
        }
    }

    private bool Keep(FoundCode? code)
    {
        if (code is not null)
        {
            _found.Add(code);
        }

        return code is not null;
    }

    private bool MayTry(FinderTriple triple, bool inverted, int times)
    {
        // A guess takes no try from the three that were seen.
        var may = _tried.Count(t => t.Inverted == inverted && t.Triple.Guessed is null == triple.Guessed is null && t.Triple.IsSameAs(triple)) < times;
        if (may)
        {
            _tried.Add((triple, inverted));
        }

        return may;
    }

    private bool IsUsed(FinderTriple triple) => IsUsed(triple.Corner) || IsUsed(triple.Right) || IsUsed(triple.Below);

    private bool IsUsed(FinderPattern finder) => _found.Exists(f => f.Place.Holds(finder.Middle));

    private static GrayPicture Treated(GrayPicture picture, Treatment treatment) => treatment switch
    {
        Treatment.Smoothed => picture.Smoothed(1),
        Treatment.Sharpened => picture.Sharpened(4, 1.5f),
        Treatment.Deblurred => Deblur.Of(picture, BlurUndone),
        Treatment.Doubled => picture.Doubled(),
        _ => picture,
    };
}

/// <summary>Pixels that may still be looked at before a picture is given up: the same on every machine, unlike a time.</summary>
internal sealed class PixelBudget(long pixels)
{
    public long Left { get; private set; } = pixels;

    public bool IsSpent => Left <= 0;

    public void Spend(long looks) => Left -= looks;
}
