using Spectre.Console;
using Tagend.Measures;
using Tagend.Orders;
using Tagend.Specs;
using Tagend.Streams;
using Tagend.Tags;
using Tagend.Workshop;
using Tagend.Workshop.Readings;

namespace Tagend.Texts;

/// <summary>Scans on the terminal: whole specs, or each post setting in large type.</summary>
internal static class ScanText
{
    public static void Write(TagScan scan, bool onlyPosts)
    {
        if (scan.Places.Count > 1)
        {
            Console.WriteLine($"{Counted.Of(scan.Places.Count, "code")} in the picture that say the same:");
        }

        if (scan.Reading is TagReading.Bag bag)
        {
            Console.WriteLine($"bag of order {bag.Order}: {string.Join(", ", bag.Contents.Select(c => $"{c.Piece} (revision {c.Revision})"))}");
            if (bag.Specs.Count == 0)
            {
                Console.WriteLine("  its code carries no specs: scan the loop tags");
            }
        }

        if (scan.Reading is TagReading.Spool spool)
        {
            Console.WriteLine(SpoolText.Of(spool.Received));
        }

        foreach (var spec in scan.Specs)
        {
            if (onlyPosts)
            {
                WritePosts(spec);
            }
            else
            {
                SpecText.Write(Console.Out, spec, OrderSlip.Blank);
            }
        }
    }

    private static void WritePosts(BuildSpec spec)
    {
        Console.WriteLine($"{spec.Order} / {spec.Piece}, revision {spec.Revision}: posts, outside to outside");
        Terminal.Shapes.Write(new FigletText(LengthWriter.Setting(spec.Posts.Tape, spec.Unit)));
    }
}
