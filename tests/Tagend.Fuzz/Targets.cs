namespace Tagend.Fuzz;

/// <summary>All targets by name.</summary>
public static class Targets
{
    public static IReadOnlyDictionary<string, Func<Corpus, ITarget>> All { get; } = new Dictionary<string, Func<Corpus, ITarget>>
    {
        ["orders"] = corpus => new OrdersTarget(corpus),
        ["sources"] = corpus => new SourcesTarget(corpus, corpus.Sources),
        ["templates"] = corpus => new TemplatesTarget(corpus),
        ["tags"] = corpus => new TagsTarget(corpus),
        ["books"] = corpus => new BooksTarget(corpus),
        ["fonts"] = corpus => new FontsTarget(corpus),
        ["logos"] = corpus => new LogosTarget(corpus),
        ["lines"] = _ => new LinesTarget(),
        ["folders"] = _ => new FoldersTarget(),
        ["pictures"] = corpus => new PicturesTarget(corpus),
    };
}
