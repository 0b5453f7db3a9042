using Tagend.Output;

namespace Tagend.Blocks;

/// <summary>A block in a flow over pages.</summary>
/// <param name="Before">Room above it unless it heads a page, in points.</param>
/// <param name="KeepWithNext">Never the last on a page.</param>
public sealed record FlowItem(Block Block, float Before = 0, bool KeepWithNext = false);

/// <summary>Pages filled by a flow, or the reasons it could not be.</summary>
public sealed record Flowed(IReadOnlyList<Placed> Pages, IReadOnlyList<string> Reasons);

/// <summary>Pours blocks over as many pages as they take.</summary>
public static class Flow
{
    /// <param name="room">Of the frame on a page, by page number from 0.</param>
    public static Flowed Pour(IReadOnlyList<FlowItem> items, Fonts fonts, Func<int, Room> room)
    {
        var waiting = new LinkedList<FlowItem>(items);
        var pages = new List<Placed>();
        while (waiting.Count > 0)
        {
            var space = room(pages.Count);
            var page = new List<(FlowItem Item, PlacedChild Child)>();
            Fill(waiting, page, fonts, space);
            TakeBack(waiting, page);
            if (page.Count == 0)
            {
                var together = waiting.Take(waiting.TakeWhile(i => i.KeepWithNext).Count() + 1);
                return new Flowed(
                    [],
                    together.Select(i => i.Block.Place(fonts, space)).OfType<Misfit>().FirstOrDefault()?.Reasons
                    ?? [$"blocks that keep together take more than a page of {space.Height:0.#} pt"]);
            }

            var children = page.Select(p => p.Child).ToList();
            pages.Add(new Placed(space.Width, children.Max(c => c.Y + c.Placed.Height), [], children));
        }

        return new Flowed(pages, []);
    }

    private static void Fill(
        LinkedList<FlowItem> waiting, List<(FlowItem Item, PlacedChild Child)> page, Fonts fonts, Room space)
    {
        var y = 0f;
        while (waiting.First?.Value is { } item)
        {
            var top = y + (page.Count == 0 ? 0 : item.Before);
            var left = space with { Height = space.Height - top };
            if (item.Block.Place(fonts, left) is Placed whole)
            {
                page.Add((item, new PlacedChild(0, top, whole)));
                waiting.RemoveFirst();
                y = top + whole.Height;
                continue;
            }

            var split = item.Block.Split(fonts, left);
            if (split.Here is { } here)
            {
                page.Add((item with { KeepWithNext = false }, new PlacedChild(0, top, here)));
                waiting.First.Value = item with { Block = split.Rest!, Before = 0 };
            }

            return;
        }
    }

    /// <summary>Gives back what must not end a page while something follows.</summary>
    private static void TakeBack(LinkedList<FlowItem> waiting, List<(FlowItem Item, PlacedChild Child)> page)
    {
        while (waiting.Count > 0 && page.Count > 0 && page[^1].Item.KeepWithNext)
        {
            waiting.AddFirst(page[^1].Item);
            page.RemoveAt(page.Count - 1);
        }
    }
}
