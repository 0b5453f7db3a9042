using System.Text.RegularExpressions;
using Tagend.Pages.Sheet;
using Xunit;

namespace Tagend.Tests.Pages;

/// <summary>What each sheet has to warn of, how gravely, and before which step: in every language the same.</summary>
/// <remarks>Hazards and remedies are common practice of makers' manuals; the words for how grave they are, ANSI Z535.6.</remarks>
public sealed partial class SheetSafetyTests
{
    private static readonly string[] Languages = ["en", "de", "fr", "es"];

    /// <summary>
    /// Sheet, the signal word of the panel, what it says and what the step after it says in each of the languages above; a
    /// panel at the head of the sheet has no step.
    /// </summary>
    private static readonly (string Sheet, SignalWord Word, string[] Says, string[]? Before)[] Hazards =
    [
        ("crossbow", SignalWord.Warning,
            ["safety on, arrow off the rail, then uncock", "Sicherung ein, Pfeil von der Schiene, nach Anleitung entspannen", "sûreté mise, flèche retirée du rail, puis désarmez", "ponga el seguro, quite la flecha del carril y desarme"],
            ["Unload and uncock", "entladen und entspannen", "Déchargez et désarmez", "Descargue y desarme"]),
        ("crossbow", SignalWord.Warning,
            ["Never ease the string down on the trigger", "Die Sehne nie am Abzug langsam ablassen", "N'accompagnez jamais la corde à la détente", "No acompañe nunca la cuerda apretando el gatillo"],
            ["Unload", "entladen", "Déchargez", "Descargue"]),
        ("crossbow", SignalWord.Warning,
            ["foot fully into the stirrup", "Fuß ganz in den Fußbügel", "pied à fond dans l'étrier", "pie hasta el fondo en el estribo"],
            ["Cock with the cocking aid", "Mit der Spannhilfe spannen", "Armez avec l'aide à l'armement", "Arme con la ayuda de armado"]),
        ("crossbow", SignalWord.Warning,
            ["in a safe direction before you cock it", "Vor dem Spannen die Armbrust in eine sichere Richtung", "dans une direction sûre avant de l'armer", "en una dirección segura antes de armarla"],
            ["Cock", "spannen", "Armez", "Arme"]),
        ("crossbow", SignalWord.Danger,
            ["both hands below the rail, holding the arrow behind its head", "beide Hände unterhalb der Schiene, den Pfeil hinter der Spitze gefasst", "les deux mains sous le rail, la flèche tenue derrière sa pointe", "las dos manos por debajo del carril, sujetando la flecha por detrás de la punta"],
            ["Push the arrow fully back against the string", "Den Pfeil ganz gegen die Sehne zurückschieben", "Poussez la flèche à fond contre la corde", "Empuje la flecha hasta el fondo contra la cuerda"]),
        ("compound", SignalWord.Warning,
            ["hold the arrow's own weight and come off at a light tap", "das Gewicht des Pfeils halten und sich mit einem leichten Klaps lösen", "tenir le poids de la flèche et se détacher d'une légère tape", "sostener el peso de la flecha y salir con un golpecito"],
            ["your finger off the trigger of the release", "den Finger nicht am Auslöser des Release", "le doigt hors de la gâchette du décocheur", "con el dedo fuera del gatillo del disparador"]),
        ("recurve", SignalWord.Warning,
            ["hold the arrow's own weight and come off at a light tap", "das Gewicht des Pfeils halten und sich mit einem leichten Klaps lösen", "tenir le poids de la flèche et se détacher d'une légère tape", "sostener el peso de la flecha y salir con un golpecito"],
            ["draw slowly", "langsam ausziehen", "armez lentement", "abra despacio"]),
        ("recurve", SignalWord.Warning,
            ["Do not step through it", "Nicht durch den Bogen steigen", "Ne passez pas la jambe au travers", "No pase la pierna por el arco"],
            null),
        ("recurve", SignalWord.Warning,
            ["the bow can flip into your face", "der Bogen kann Ihnen ins Gesicht schlagen", "l'arc peut se retourner dans votre visage", "el arco puede saltarle a la cara"],
            null),
        ("compound", SignalWord.Warning,
            ["Stand to the side of the limbs", "Seitlich der Wurfarme stehen", "Tenez-vous à côté des branches", "Colóquese al lado de las palas"],
            ["Set the bow into the press", "in die Presse setzen", "Placez l'arc dans la presse", "Coloque el arco en la prensa"]),
        ("compound", SignalWord.Warning,
            ["a loop half on its post", "nur halb auf ihrem Zapfen", "une boucle à demi sur son ergot", "una gaza a medias en su pivote"],
            ["Let the press out a little at a time", "Die Presse in kleinen Schritten entlasten", "Relâchez la presse peu à peu", "Afloje la prensa poco a poco"]),
    ];

    /// <summary>Sheets, and what stands in their running text in each language.</summary>
    private static readonly (string Sheets, string[] Says)[] Rules =
    [
        ("compound crossbow recurve", ["keep it with the ", "bewahren Sie es bei", "gardez-la avec l'", "guárdela con "]),
        ("compound crossbow recurve", ["Minors ", "Minderjährige ", "Les mineurs ", "Los menores "]),
        ("compound crossbow recurve", ["never on servings", "nie auf Wicklungen", "jamais sur les tranche-fils", "nunca en los forrados"]),
        ("crossbow", ["The one exception is the rail lubricant on the center serving", "Einzige Ausnahme ist das Gleitmittel der Schiene auf der Mittelwicklung", "Seule exception : le lubrifiant du rail sur le tranche-fil central", "La única excepción es el lubricante del carril en el forrado central"]),
        ("compound", ["only in the press and with the loop off its post", "nur in der Presse und mit der Schlaufe vom Zapfen", "seulement dans la presse et la boucle hors de son ergot", "solo en la prensa y con la gaza fuera de su pivote"]),
        ("crossbow", ["only in the press or stringing aid and with the loop off its post or tip", "nur in der Presse oder Montagehilfe und mit der Schlaufe von Zapfen oder Spitze", "seulement dans la presse ou l'aide au montage et la boucle hors de son ergot ou de sa poupée", "solo en la prensa o la ayuda de montaje y con la gaza fuera de su pivote o punta"]),
        ("crossbow", ["Mark the new string at both edges of the rail", "Die neue Sehne an beiden Kanten der Schiene markieren", "Marquez la nouvelle corde aux deux bords du rail", "Marque la cuerda nueva en los dos bordes del carril"]),
        ("crossbow", ["Keep room for the limbs", "Den Wurfarmen Platz lassen", "Laissez la place aux branches", "Deje sitio a las palas"]),
        ("compound", ["(peep rotation)", "(Peep-Rotation)", "(rotation de la visette)", "(rotación del peep)"]),
        ("compound", ["Whoever fits the set puts the peep in", "Das Peep setzt ein, wer den Satz auflegt", "est mise maintenant par la personne qui monte le jeu", "lo pone ahora quien monta el juego"]),
        ("compound crossbow recurve", ["| Issued |", "| Ausgestellt am |", "| Établie le |", "| Emitida el |"]),
    ];

    public static TheoryData<int, string> EveryHazard => new(Hazards.SelectMany((_, i) => Languages.Select(l => (i, l))));

    public static TheoryData<int, string> EveryRule => new(Rules.SelectMany((_, i) => Languages.Select(l => (i, l))));

    public static MatrixTheoryData<string, string> Sheets => new(["compound", "recurve", "crossbow"], Languages);

    [Theory]
    [MemberData(nameof(EveryHazard))]
    public void Hazard_OfASheet_HasItsPanelBeforeTheStep(int hazard, string language)
    {
        var (sheet, word, says, before) = Hazards[hazard];
        var said = says[Array.IndexOf(Languages, language)];
        var (lines, signal) = (LinesOf(sheet, language), word.In(SheetFixture.Language(language)));
        var panel = Array.FindIndex(lines, l => l.StartsWith($"> **{signal}** ", StringComparison.Ordinal) && l.Contains(said, StringComparison.Ordinal));

        Assert.True(panel >= 0, said);
        if (before is not null)
        {
            Assert.Matches($@"^\d+\. .*{Regex.Escape(before[Array.IndexOf(Languages, language)])}", lines[panel + 2]);
        }
    }

    [Theory]
    [MemberData(nameof(EveryRule))]
    public void Rule_OfASheet_IsSaid(int rule, string language) => Assert.All(
        Rules[rule].Sheets.Split(' '),
        sheet => Assert.Contains(Rules[rule].Says[Array.IndexOf(Languages, language)], string.Join('\n', LinesOf(sheet, language)), StringComparison.Ordinal));

    /// <summary>Below the safety part at the head, a panel is followed by a step, and no step by a panel of its own.</summary>
    [Theory]
    [MemberData(nameof(Sheets))]
    public void Panels_OfASheet_StandAtItsHeadOrBeforeAStep(string sheet, string language)
    {
        var lines = LinesOf(sheet, language);
        var bag = Array.FindIndex(lines, l => l.StartsWith("| [ ] |", StringComparison.Ordinal));
        var panels = lines.Index().Where(l => l.Item.TrimStart().StartsWith('>')).ToList();

        Assert.Contains(panels, p => p.Index < bag);
        Assert.All(panels, p => Assert.StartsWith(">", p.Item, StringComparison.Ordinal));
        Assert.All(panels.Where(p => p.Index > bag), p => Assert.Matches(@"^\d+\. ", lines[p.Index + 2]));
    }

    /// <summary>Steps are counted through, whatever panel stands between them.</summary>
    [Theory]
    [MemberData(nameof(Sheets))]
    public void Steps_OfAPart_AreCountedThrough(string sheet, string language)
    {
        var last = 0;
        foreach (var line in LinesOf(sheet, language))
        {
            if (line.StartsWith("## ", StringComparison.Ordinal))
            {
                last = 0;
            }
            else if (Step().Match(line) is { Success: true } step)
            {
                Assert.Equal(++last, int.Parse(step.Groups[1].Value, System.Globalization.CultureInfo.InvariantCulture));
            }
        }
    }

    private static string[] LinesOf(string sheet, string language) =>
        File.ReadAllLines(Path.Combine(TestFiles.Templates, "sheets", $"{sheet}.{language}.md"));

    [GeneratedRegex(@"^(\d+)\. ")]
    private static partial Regex Step();
}
