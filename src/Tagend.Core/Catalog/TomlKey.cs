using Tomlyn.Syntax;

namespace Tagend.Catalog;

/// <summary>The name of an entry or a section, without its quotes; the parts of a dotted one with points between.</summary>
internal static class TomlKey
{
    public static string Plain(KeySyntax key) => key.DotKeys.ChildrenCount == 0
        ? Plain(key.Key)
        : string.Join('.', key.DotKeys.Select(d => d.Key).Prepend(key.Key).Select(Plain));

    private static string Plain(BareKeyOrStringValueSyntax? part) => part switch
    {
        StringValueSyntax quoted => quoted.Value ?? "",
        BareKeySyntax bare => bare.Key?.Text ?? "",
        _ => "",
    };
}
