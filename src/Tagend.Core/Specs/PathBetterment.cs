namespace Tagend.Specs;

/// <summary>Moves and turns stretches of a path, in place, while each step makes it cheaper.</summary>
/// <param name="cost">From one stop to another; from nothing where the first is below 0.</param>
/// <param name="mayWork">False once the work allowed is done.</param>
internal sealed class PathBetterment(int[] path, Func<int, int, int> cost, Func<bool> mayWork)
{
    private const int LongestMoved = 3;

    // Sums of the costs up to a stop, along the path and against it.
    private readonly int[] _along = new int[path.Length];
    private readonly int[] _against = new int[path.Length];

    public void Run()
    {
        while (MoveAll() | TurnAll())
        {
        }
    }

    private int At(int i) => i < 0 ? -1 : path[i];

    /// <summary>Nothing follows the last stop, at no cost.</summary>
    private int Link(int from, int to) => to >= path.Length ? 0 : cost(At(from), path[to]);

    private void Measure()
    {
        for (var i = 1; i < path.Length; i++)
        {
            _along[i] = _along[i - 1] + cost(path[i - 1], path[i]);
            _against[i] = _against[i - 1] + cost(path[i], path[i - 1]);
        }
    }

    /// <summary>Takes short stretches out and puts each between two other stops.</summary>
    private bool MoveAll()
    {
        var moved = false;
        for (var first = 0; first < path.Length && mayWork(); first++)
        {
            for (var last = first; last < Math.Min(first + LongestMoved, path.Length); last++)
            {
                if (BetterPlace(first, last) is { } after)
                {
                    Move(first, last, after);
                    moved = true;
                }
            }
        }

        return moved;
    }

    /// <summary>Index of a stop, -1 for none, behind which a stretch costs less than where it is.</summary>
    private int? BetterPlace(int first, int last)
    {
        var gain = Link(first - 1, first) + Link(last, last + 1) - Link(first - 1, last + 1);
        for (var after = -1; gain > 0 && after < path.Length; after++)
        {
            if ((after < first - 1 || after > last)
                && Link(after, first) + Link(last, after + 1) - Link(after, after + 1) < gain)
            {
                return after;
            }
        }

        return null;
    }

    private void Move(int first, int last, int after)
    {
        var (from, middle, to) = after < first ? (after + 1, first, last) : (first, last + 1, after);
        int[] swapped = [.. path[middle..(to + 1)], .. path[from..middle]];
        swapped.CopyTo(path, from);
    }

    /// <summary>Turns stretches around.</summary>
    private bool TurnAll()
    {
        var turnedAny = false;
        Measure();
        for (var first = 0; first < path.Length && mayWork(); first++)
        {
            for (var last = first + 1; last < path.Length; last++)
            {
                var now = Link(first - 1, first) + _along[last] - _along[first] + Link(last, last + 1);
                var turned = Link(first - 1, last) + _against[last] - _against[first] + Link(first, last + 1);
                if (turned < now)
                {
                    Array.Reverse(path, first, last - first + 1);
                    Measure();
                    turnedAny = true;
                }
            }
        }

        return turnedAny;
    }
}
