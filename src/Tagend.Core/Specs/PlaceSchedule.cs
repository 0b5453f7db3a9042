using Tagend.Catalog;
using Tagend.Measures;
using Tagend.Orders;
using Tagend.Problems;

namespace Tagend.Specs;

/// <summary>
/// Where everything sits on the finished piece: servings, separators and marks, checked against each other. Of a row that is broken
/// it is what is known; what is not is left out, and so is what would follow from it.
/// </summary>
internal sealed class PlaceSchedule
{
    private readonly OrderLine _line;
    private readonly PiecePlan? _plan;
    private readonly ShopCatalog _catalog;
    private readonly LengthUnit _unit;
    private readonly Length? _finished;
    private readonly Bundle? _bundle;
    private readonly List<Problem> _problems;

    /// <param name="plan">Null where it is not known, as are the length and the bundle.</param>
    public PlaceSchedule(
        OrderLine line,
        PiecePlan? plan,
        ShopCatalog catalog,
        LengthUnit unit,
        Length? finished,
        Bundle? bundle,
        List<Problem> problems)
    {
        (_line, _plan, _catalog, _unit, _finished, _bundle, _problems) = (line, plan, catalog, unit, finished, bundle, problems);
        Servings = ReadServings();
        Separators = ReadSeparators();
        Marks = ReadMarks();
        CheckNockPoint();
        CheckSeparators();
        if (plan is { NeedsCenterServing: true } && line.CenterServing is null && !IsUnread(OrderColumn.CenterServing))
        {
            Report(OrderColumn.CenterServing, SpecWording.CenterServingForgotten(plan.Name), Severity.Warning);
        }
    }

    public ValueList<Serving> Servings { get; }

    public ValueList<Separator> Separators { get; }

    public ValueList<Mark> Marks { get; }

    private ValueList<Serving> ReadServings()
    {
        var placed = new List<(Serving Serving, string Column)>();
        foreach (var serving in _line.Servings ?? (IsUnread(OrderColumn.Servings) ? null : _plan?.Servings) ?? [])
        {
            Add(serving, OrderColumn.Servings);
        }

        if (_line.CenterServing is { } center)
        {
            Add(center, OrderColumn.CenterServing);
        }

        placed.Sort((a, b) => a.Serving.From.CompareTo(b.Serving.From));
        for (var i = 1; i < placed.Count; i++)
        {
            var (first, second) = (placed[i - 1], placed[i]);
            if (second.Serving.From < first.Serving.To)
            {
                var column = first.Column == OrderColumn.CenterServing ? first.Column : second.Column;
                Report(column, SpecWording.Overlap(first.Serving, second.Serving, _unit));
            }
        }

        return placed.Select(p => p.Serving).ToValueList();

        void Add(OrderedServing serving, string column)
        {
            if (Place(serving, column) is { } made)
            {
                placed.Add((made, column));
            }
        }
    }

    private Serving? Place(OrderedServing ordered, string column)
    {
        var name = ordered.Thread ?? (column == OrderColumn.CenterServing ? CenterThread() : _plan?.Thread);
        var thread = name is null ? null : _catalog.Threads.GetValueOrDefault(name);
        if (name is not null && thread is null)
        {
            Report(column, SpecWording.Unknown($"thread as {name}", name, _catalog.Threads.Keys));
        }

        if (_finished is not { } finished)
        {
            return null;
        }

        var from = ordered.From.FromA(finished);
        var to = ordered.To.FromA(finished);
        (from, to) = (Length.Min(from, to), Length.Max(from, to));
        if (from == to)
        {
            Report(column, SpecWording.EmptyServing(ordered.Text));
            return null;
        }

        var what = $"the serving {ordered.Text}";
        if (!IsOnPiece(what, from, finished, column) || !IsOnPiece(what, to, finished, column) || thread is null)
        {
            return null;
        }

        var role = column == OrderColumn.CenterServing ? ServingRole.Center
            : from == Length.Zero ? ServingRole.EndA
            : to == finished ? ServingRole.EndB
            : ServingRole.Other;
        return new Serving(role, from, to, thread.Name, thread.Diameter, ordered.Color ?? _plan?.ThreadColor ?? "");
    }

    /// <summary>The thread on hand that suits the nock groove best, where one is given.</summary>
    private string? CenterThread() => _line.NockGroove is not { } groove ? _plan?.Thread
        : _bundle is null ? null
        : NockFit.Best(groove, _catalog.Shop.WantedNockClearance, _bundle.Diameter, _catalog.Threads.Values).Name;

    private ValueList<Separator> ReadSeparators()
    {
        var places = (_plan?.Separators ?? []).Select(s => (s.Name, s.At)).ToList();
        if (_line.Peep is { } peep)
        {
            places.Add((OrderColumn.Peep, peep));
        }
        else if (_plan is { NeedsPeep: true } && !IsUnread(OrderColumn.Peep))
        {
            Report(OrderColumn.Peep, SpecWording.PeepForgotten(_plan.Name), Severity.Warning);
        }

        return _finished is not { } finished || places.Count == 0 ? [] : places
            .Select(p => new Separator(p.Name, p.At.FromA(finished), (_bundle?.Strands ?? 0) / 2)) // without a bundle for the checks alone
            .Where(s => IsOnPiece($"the {s.Name}", s.Position, finished, s.Name == OrderColumn.Peep ? OrderColumn.Peep : OrderColumn.Kind))
            .OrderBy(s => s.Position)
            .ToValueList();
    }

    private ValueList<Mark> ReadMarks()
    {
        if ((_line.NockPoint is null && _line.SpeedNocks is null) || _finished is not { } finished)
        {
            return [];
        }

        var speedNocks = (_line.SpeedNocks ?? []).Select(p => (Kind: MarkKind.SpeedNock, At: p, Column: OrderColumn.SpeedNocks));
        var all = _line.NockPoint is { } nock
            ? speedNocks.Prepend((Kind: MarkKind.NockPoint, At: nock, Column: OrderColumn.NockPoint))
            : speedNocks;
        return all
            .Select(m => (Mark: new Mark(m.Kind, m.At.FromA(finished)), m.Column))
            .Where(m => IsOnPiece(m.Mark.Kind == MarkKind.NockPoint ? "the nock point" : "the speed nock", m.Mark.Position, finished, m.Column))
            .Select(m => m.Mark)
            .OrderBy(m => m.Position)
            .ToValueList();
    }

    private void CheckNockPoint()
    {
        if (Marks.FirstOrDefault(m => m.Kind == MarkKind.NockPoint) is not { } nock)
        {
            return;
        }

        if (Servings.FirstOrDefault(s => s.Role == ServingRole.Center) is not { } center)
        {
            if (_line.CenterServing is null && !IsUnread(OrderColumn.CenterServing))
            {
                Report(OrderColumn.NockPoint, SpecWording.NoCenterServing(nock.Position, _unit));
            }
        }
        else if (nock.Position < center.From || nock.Position > center.To)
        {
            Report(OrderColumn.NockPoint, SpecWording.NockPointOutside(nock.Position, SpecWording.Span(center, _unit), _unit));
        }
    }

    private void CheckSeparators()
    {
        foreach (var separator in Separators)
        {
            if (Servings.FirstOrDefault(s => s.From < separator.Position && separator.Position < s.To) is { } serving)
            {
                Report(separator.Name == OrderColumn.Peep ? OrderColumn.Peep : OrderColumn.Servings, SpecWording.SeparatorUnderServing(separator, serving, _unit));
            }
        }
    }

    private bool IsOnPiece(string what, Length place, Length finished, string column)
    {
        if (place >= Length.Zero && place <= finished)
        {
            return true;
        }

        Report(column, SpecWording.OutsidePiece(what, place, finished, _unit));
        return false;
    }

    private bool IsUnread(string column) => _line.Unread.Contains(column);

    private void Report(string column, string message, Severity severity = Severity.Refusal) =>
        _problems.Add(_line.Row.Problem(column, message, severity));
}
