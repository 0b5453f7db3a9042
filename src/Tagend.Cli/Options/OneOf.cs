using System.CommandLine;

namespace Tagend.Options;

/// <summary>An option that takes one of some words, in any case.</summary>
internal static class OneOf
{
    public static Option<T> TakesOneOf<T>(this Option<T> option, params string[] words)
        where T : class?
    {
        option.CustomParser = result =>
        {
            var text = result.Tokens[0].Value;
            var word = Array.Find(words, w => w.Equals(text, StringComparison.OrdinalIgnoreCase));
            if (word is null)
            {
                result.AddError($"{option.Name} \"{text}\": expected {string.Join(", ", words[..^1])} or {words[^1]}");
            }

            return (T)(object?)word!;
        };
        option.CompletionSources.Add(words);
        return option;
    }
}
