namespace Tagend.Blocks;

/// <summary>The dark areas of a QR code as outlines: one shape without seams, in few small numbers.</summary>
/// <remarks>
/// Dark stays clear of light by a trace: printers paint every dot that a shape touches (ISO 32000-1, 10.6.5), and
/// would add a row of dots to modules whose edges lie on dots but for a rounding.
/// </remarks>
internal static class QrOutline
{
    /// <summary>Two decimals of a module: a number's last two digits repeat in a file and take little room in it.</summary>
    public const int UnitsPerModule = 100;

    /// <summary>A fiftieth of a module: more than a rounding, less than can be seen.</summary>
    private const int Trace = 2;

    /// <summary>The ways on from each way: right, straight on, left.</summary>
    private static readonly int[][] WaysFrom = [[1, 0, 3], [2, 1, 0], [3, 2, 1], [0, 3, 2]];

    /// <summary>Closed outlines, dark at the right hand of each: around dark areas clockwise, around holes the other way.</summary>
    public static IReadOnlyList<IReadOnlyList<(int X, int Y)>> Of(QrSymbol symbol)
    {
        var edges = EdgesOf(symbol);
        var outlines = new List<IReadOnlyList<(int X, int Y)>>();
        while (edges.Count > 0)
        {
            outlines.Add(TakeOne(edges));
        }

        return outlines;
    }

    /// <summary>All sides between dark and light, each a step of one module, by where it starts and which way it goes.</summary>
    private static EdgeSet EdgesOf(QrSymbol symbol)
    {
        var edges = new EdgeSet(symbol.Modules + 1);
        for (var row = 0; row < symbol.Modules; row++)
        {
            for (var column = 0; column < symbol.Modules; column++)
            {
                if (IsDark(column, row))
                {
                    AddIfLight(column, row - 1, (row, column, 0));
                    AddIfLight(column + 1, row, (row, column + 1, 1));
                    AddIfLight(column, row + 1, (row + 1, column + 1, 2));
                    AddIfLight(column - 1, row, (row + 1, column, 3));
                }
            }
        }

        return edges;

        bool IsDark(int column, int row) =>
            column >= 0 && row >= 0 && column < symbol.Modules && row < symbol.Modules && symbol.IsDark(column, row);

        void AddIfLight(int column, int row, (int Y, int X, int Way) edge)
        {
            if (!IsDark(column, row))
            {
                edges.Add(edge);
            }
        }
    }

    /// <summary>Takes one outline out of the edges. Where two ways are open it turns right, around the same module.</summary>
    private static List<(int X, int Y)> TakeOne(EdgeSet edges)
    {
        var corners = new List<(int X, int Y)>();
        var first = edges.First();
        var edge = first;
        do
        {
            edges.Remove(edge);
            var (stepX, stepY) = Step(edge.Way);
            var (x, y) = (edge.X + stepX, edge.Y + stepY);
            var way = Array.Find(WaysFrom[edge.Way], w => edges.Contains((y, x, w)) || (y, x, w) == first);
            if (way != edge.Way)
            {
                var (inX, inY) = Inward(edge.Way);
                var (outX, outY) = Inward(way);
                corners.Add(((x * UnitsPerModule) + (Trace * (inX + outX)), (y * UnitsPerModule) + (Trace * (inY + outY))));
            }

            edge = (y, x, way);
        }
        while (edge != first);
        return corners;
    }

    /// <summary>Ways are right, down, left, up.</summary>
    private static (int X, int Y) Step(int way) => way switch
    {
        0 => (1, 0),
        1 => (0, 1),
        2 => (-1, 0),
        _ => (0, -1),
    };

    /// <summary>To the right hand of a way: into the dark.</summary>
    private static (int X, int Y) Inward(int way) => Step((way + 1) % 4);

    /// <summary>Edges between the corners of a grid, four ways from each, row by row.</summary>
    private sealed class EdgeSet(int corners)
    {
        private readonly bool[] _edges = new bool[corners * corners * 4];
        private int _first;

        public int Count { get; private set; }

        public void Add((int Y, int X, int Way) edge) => Set(edge, true);

        public void Remove((int Y, int X, int Way) edge) => Set(edge, false);

        public bool Contains((int Y, int X, int Way) edge) => _edges[IndexOf(edge)];

        /// <summary>The first that is left; edges are only taken out meanwhile.</summary>
        public (int Y, int X, int Way) First()
        {
            _first = Array.IndexOf(_edges, true, _first);
            return (_first / 4 / corners, _first / 4 % corners, _first % 4);
        }

        private int IndexOf((int Y, int X, int Way) edge) => (((edge.Y * corners) + edge.X) * 4) + edge.Way;

        private void Set((int Y, int X, int Way) edge, bool isThere)
        {
            ref var there = ref _edges[IndexOf(edge)];
            Count += (isThere ? 1 : 0) - (there ? 1 : 0);
            there = isThere;
        }
    }
}
