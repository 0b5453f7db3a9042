using Tagend.Catalog;
using Tagend.Fits;
using Tagend.Measures;
using Tagend.Workshop.Printing;

namespace Tagend.Texts;

/// <summary>Fits as plain lines on the terminal.</summary>
internal static class FitText
{
    public static void Write(TextWriter output, IEnumerable<TakeUpFit> fits, ShopCatalog catalog)
    {
        foreach (var fit in fits)
        {
            output.WriteLine(FitWording.Title(fit));
            foreach (var fact in FitWording.Facts(fit, catalog))
            {
                Line(fact.Label, fact.Text);
            }

            foreach (var point in fit.Points.Where(p => p.IsOutlier || p.Build.IsLeftOut))
            {
                Line(point.Build.IsLeftOut ? "left out" : "outlier", Say(point, catalog.Shop.Unit));
            }

            output.WriteLine();
        }

        void Line(string label, string text) => output.WriteLine($"  {label,-18}{text}");
    }

    private static string Say(FitPoint point, LengthUnit unit) =>
        $"build {point.Build.Number}, {point.Build.Order}/{point.Build.Piece}: {FitWording.Off(point, unit)}; "
        + (point.Build.IsLeftOut ? $"back in with --take-in {point.Build.Number}" : $"still in; out with --leave-out {point.Build.Number}");
}
