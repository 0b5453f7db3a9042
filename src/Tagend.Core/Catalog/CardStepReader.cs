using Tagend.Problems;

namespace Tagend.Catalog;

/// <summary>Reads card.toml: the steps of a jig card, in their order.</summary>
internal static class CardStepReader
{
    private const string FileName = "card.toml";

    /// <summary>More would not find room on any card.</summary>
    private const int MostSteps = 16;

    /// <summary>The steps; the usual ones where there is no such file.</summary>
    public static IReadOnlyList<CardStep> Read(string folder, ICollection<Problem> problems)
    {
        var path = Path.Combine(folder, FileName);
        if (!File.Exists(path) || TomlFile.Read(path, FileName, problems) is not { } file)
        {
            return CardStep.Usual;
        }

        var steps = new List<CardStep>();
        foreach (var section in file.Sections)
        {
            if (section.Name != "step")
            {
                section.Report(null, null, CatalogWording.Expected("[[step]]"));
            }
            else if (steps.Count == MostSteps)
            {
                section.Report(null, null, CatalogWording.TooManySteps(MostSteps));
            }
            else
            {
                steps.Add(Read(section));
            }

            section.RefuseUnknown();
        }

        if (steps.Count == 0)
        {
            file.Root.Report(null, null, CatalogWording.MissingSection("[step]"));
        }

        file.Root.RefuseUnknown();
        return steps;
    }

    private static CardStep Read(TomlSection section)
    {
        var title = section.Text("title", "");
        var text = section.Text("text", "");
        if (section.OptionalText("does") is null)
        {
            if (title.Length == 0)
            {
                section.Report(null, null, CatalogWording.NamelessStep);
            }

            return new CardStep(CardStepKind.Own, title, text);
        }

        var kind = section.Choice(
            "does",
            ("lay up", CardStepKind.LayUp),
            ("tie", CardStepKind.Tie),
            ("separators", CardStepKind.Separators),
            ("twist", CardStepKind.Twist),
            ("stretch", CardStepKind.Stretch),
            ("rest", CardStepKind.Rest),
            ("serve", CardStepKind.Serve),
            ("stretch again", CardStepKind.StretchAgain),
            ("measure", CardStepKind.Measure),
            ("inspect", CardStepKind.Inspect));
        return new CardStep(kind, title, text);
    }
}
