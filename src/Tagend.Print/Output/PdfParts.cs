using Tagend.Pdf;

namespace Tagend.Output;

/// <summary>Marks what is drawn as belonging to a part of the page, or to none: ISO 32000-1, 14.6 and 14.8.2.2.</summary>
/// <remarks>
/// What pages leave unsaid: text outside of a part is a paragraph, anything else that is drawn outside of a figure decorates
/// the page, and items that follow each other are a list.
/// </remarks>
internal sealed class PdfParts(PdfStructure structure, PdfContent content)
{
    /// <summary>Those begun and not ended; null for one that has none of its own in the tree.</summary>
    private readonly Stack<PartKind?> _begun = [];

    private Marking _marking;

    private enum Marking
    {
        None,
        Part,
        Artifact,
    }

    private PartKind? Around
    {
        get
        {
            foreach (var kind in _begun)
            {
                if (kind is not null)
                {
                    return kind;
                }
            }

            return null;
        }
    }

    public void Start(PartStart part)
    {
        EndMarking();
        if (part.Kind != PartKind.Item)
        {
            EndList();
        }

        var around = Around;
        if (around == PartKind.Artifact || (part.Kind == PartKind.Paragraph && HoldsText(around)))
        {
            _begun.Push(null);
            return;
        }

        if (part.Kind == PartKind.Item && around != PartKind.List)
        {
            Begin(PartKind.List);
        }

        Begin(part.Kind, part.InWords);
    }

    public void End()
    {
        EndMarking();
        EndList();
        if (_begun.Pop() is { } kind && kind != PartKind.Artifact)
        {
            structure.Close();
        }
    }

    /// <summary>Before a text is drawn.</summary>
    /// <returns>Whether a part was begun for it alone, to be ended after it.</returns>
    public bool BeginText()
    {
        if (Around == PartKind.Artifact)
        {
            MarkAsArtifact();
            return false;
        }

        EndList();
        var isAlone = !HoldsText(Around) && Around != PartKind.Body;
        if (isAlone)
        {
            Start(new PartStart(PartKind.Paragraph));
        }

        MarkAsPart();
        return isAlone;
    }

    /// <summary>Before anything else is drawn.</summary>
    public void BeginGraphic()
    {
        if (Around == PartKind.Figure)
        {
            MarkAsPart();
        }
        else
        {
            MarkAsArtifact();
        }
    }

    /// <summary>Ends what the page has not ended.</summary>
    public void EndPage()
    {
        EndMarking();
        while (_begun.Count > 0)
        {
            End();
        }
    }

    private static bool HoldsText(PartKind? kind) => kind is PartKind.Paragraph or PartKind.Heading1 or PartKind.Heading2 or PartKind.Heading3
        or PartKind.HeaderCell or PartKind.Cell or PartKind.Label or PartKind.Figure;

    private static ReadOnlySpan<byte> TypeOf(PartKind kind) => kind switch
    {
        PartKind.Paragraph => "P"u8,
        PartKind.Heading1 => "H1"u8,
        PartKind.Heading2 => "H2"u8,
        PartKind.Heading3 => "H3"u8,
        PartKind.Table => "Table"u8,
        PartKind.Row => "TR"u8,
        PartKind.HeaderCell => "TH"u8,
        PartKind.Cell => "TD"u8,
        PartKind.List => "L"u8,
        PartKind.Item => "LI"u8,
        PartKind.Label => "Lbl"u8,
        PartKind.Body => "LBody"u8,
        PartKind.Figure => "Figure"u8,
        _ => throw new InvalidOperationException($"no structure type for {kind}"),
    };

    private void Begin(PartKind kind, string? inWords = null)
    {
        _begun.Push(kind);
        if (kind != PartKind.Artifact)
        {
            structure.Open(TypeOf(kind), inWords);
        }
    }

    private void EndList()
    {
        if (_begun.TryPeek(out var kind) && kind == PartKind.List)
        {
            EndMarking();
            _begun.Pop();
            structure.Close();
        }
    }

    private void MarkAsPart()
    {
        if (_marking != Marking.Part)
        {
            EndMarking();
            content.BeginMarked(TypeOf(Around!.Value), structure.Mark());
            _marking = Marking.Part;
        }
    }

    private void MarkAsArtifact()
    {
        if (_marking != Marking.Artifact)
        {
            EndMarking();
            content.BeginArtifact();
            _marking = Marking.Artifact;
        }
    }

    private void EndMarking()
    {
        if (_marking != Marking.None)
        {
            content.EndMarked();
            _marking = Marking.None;
        }
    }
}
