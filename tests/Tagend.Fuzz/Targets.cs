namespace Tagend.Fuzz;

/// <summary>All targets by name.</summary>
public static class Targets
{
    public static IReadOnlyDictionary<string, Func<Corpus, ITarget>> All { get; } = new Dictionary<string, Func<Corpus, ITarget>>
    {
        ["orders"] = corpus => new OrdersTarget(corpus),
        ["templates"] = corpus => new TemplatesTarget(corpus),
        ["tags"] = corpus => new TagsTarget(corpus),
        ["books"] = corpus => new BooksTarget(corpus),
        ["pictures"] = corpus => new PicturesTarget(corpus),
    };
}
