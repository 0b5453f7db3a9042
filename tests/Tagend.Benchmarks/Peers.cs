namespace Tagend.Benchmarks;

/// <summary>Other ways to make the same card page. Those that compile markup get it ready made.</summary>
internal sealed class Peers(string folder, string fonts, string modules)
{
    private static string Scripts => Path.Combine(AppContext.BaseDirectory, "peers");

    /// <summary>Writes what they read, from the list of one page.</summary>
    public IReadOnlyList<Contender> Of(string list)
    {
        var lines = File.ReadAllLines(list);
        var (html, typst, fontsConf) = (Path.Combine(folder, "card.html"), Path.Combine(folder, "card.typ"), Path.Combine(folder, "fonts.conf"));
        File.WriteAllText(html, Markup.Html(lines, fonts));
        File.WriteAllText(typst, Markup.Typst(lines));
        File.WriteAllText(fontsConf, $"<?xml version=\"1.0\"?><fontconfig><dir>{fonts}</dir><cachedir>{Path.Combine(folder, "fontcache")}</cachedir></fontconfig>");
        var ourFonts = new Dictionary<string, string> { ["FONTCONFIG_FILE"] = fontsConf };
        return
        [
            new("Cairo, from Python", "/usr/bin/python3", Script("cairo_page.py"), list, "OUT/card.pdf") { Pages = 1, Environment = ourFonts },
            new("ReportLab", "/usr/bin/python3", Script("reportlab_page.py"), list, fonts, "OUT/card.pdf") { Pages = 1 },
            new("typst, in Node", "node", Script("typst_page.mjs"), modules, typst, fonts, "OUT/card.pdf") { Pages = 1 },
            new("WeasyPrint", "weasyprint", "-q", html, "OUT/card.pdf") { Pages = 1, Environment = ourFonts },
            new(
                "Chromium, print to PDF", "chromium", "--headless", "--no-sandbox", "--disable-gpu", "--no-pdf-header-footer",
                $"--user-data-dir={Path.Combine(folder, "browser")}", "--print-to-pdf=OUT/card.pdf", html) { Pages = 1 },
        ];
    }

    /// <summary>Their versions, where they are there.</summary>
    public string Versions() => string.Join(", ", new[]
    {
        ("Cairo ", "/usr/bin/python3", "-c", "import cairo; print(cairo.cairo_version_string() + ' (pycairo ' + cairo.version + ')')"),
        ("ReportLab ", "/usr/bin/python3", "-c", "import reportlab; print(reportlab.Version)"),
        ("typst by typst-ts-node-compiler ", "node", "-p", $"require('{modules}/node_modules/@myriaddreamin/typst-ts-node-compiler/package.json').version"),
        ("", "weasyprint", "--version", ""),
        ("", "chromium", "--version", ""),
    }.Select(v => (v.Item1, Said: Machine.Say(v.Item2, v.Item3, v.Item4))).Where(v => v.Said.Length > 0).Select(v => v.Item1 + v.Said));

    private static string Script(string name) => Path.Combine(Scripts, name);
}
