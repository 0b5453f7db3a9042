using Tagend.Orders;
using Tagend.Station.Desk;
using Tagend.Station.Frame;

namespace Tagend.Station.Screens.Orders;

/// <summary>A cell that differs between two versions of a file.</summary>
/// <param name="Line">Of the version that was changed here.</param>
public sealed record CellDifference(string Order, int Line, string Title, string Here, string There);

/// <summary>Two versions of a file: what was changed here, and what somebody else wrote to its folder.</summary>
/// <param name="Seal">Of the folder's version.</param>
public sealed record VersionsModel(string Name, IReadOnlyList<CellDifference> Differences, int RowsHere, int RowsThere, string Seal)
{
    public string Path => $"/orders/{Uri.EscapeDataString(Name)}";
}

/// <summary>Shows both versions of a file that was changed in two places.</summary>
internal static class VersionsScreen
{
    public static void Map(IEndpointRouteBuilder routes) =>
        routes.MapGet("/orders/{name}/versions", (string name, HttpContext context, OrderDesk desk) => Show(name, context, desk));

    private static IResult Show(string name, HttpContext context, OrderDesk desk)
    {
        if (desk.Open(name) is not { Other: { } other } file)
        {
            return Redirect.To(context, $"/orders/{Uri.EscapeDataString(name)}");
        }

        var (here, there) = (OrderSheet.Read(name, file.Bytes, []), OrderSheet.Read(name, other, []));
        return VersionsPage.Create(new VersionsModel(
            name, here is null || there is null ? [] : Differences(here, there), here?.Rows.Count ?? 0, there?.Rows.Count ?? 0, OrderDesk.SealOf(other)));
    }

    private static List<CellDifference> Differences(OrderSheet here, OrderSheet there)
    {
        var titles = here.Titles.Count >= there.Titles.Count ? here.Titles : there.Titles;
        var found = new List<CellDifference>();
        for (var row = 0; row < Math.Max(here.Rows.Count, there.Rows.Count); row++)
        {
            var (mine, theirs) = (here.Rows.ElementAtOrDefault(row), there.Rows.ElementAtOrDefault(row));
            for (var column = 0; column < titles.Count; column++)
            {
                var (a, b) = (mine?[column] ?? "", theirs?[column] ?? "");
                if (a != b)
                {
                    found.Add(new CellDifference((mine ?? theirs)![0], (mine ?? theirs)!.Line, titles[column].Replace('_', ' '), a, b));
                }
            }
        }

        return found;
    }
}
