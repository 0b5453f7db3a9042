using ArchUnitNET.Domain;
using ArchUnitNET.Domain.Dependencies;
using ArchUnitNET.Loader;
using Xunit;
using House = ArchUnitNET.Domain.Architecture;

namespace Tagend.Tests;

/// <summary>What the projects and their folders may refer to: DEVELOPERS.md.</summary>
public class HouseTests
{
    private const string Program = "tagend";

    private static readonly Dictionary<string, string[]> Allowed = new()
    {
        ["Tagend.Core"] = [],
        ["Tagend.Qr"] = [],
        ["Tagend.Print"] = ["Tagend.Core", "Tagend.Qr"],
        ["Tagend.Pages"] = ["Tagend.Core", "Tagend.Qr", "Tagend.Print"],
        ["Tagend.Jobs"] = ["Tagend.Core"],
        ["Tagend.Workshop"] = ["Tagend.Core", "Tagend.Qr", "Tagend.Print", "Tagend.Pages", "Tagend.Jobs"],
        ["Tagend.Station"] = ["Tagend.Core", "Tagend.Qr", "Tagend.Print", "Tagend.Pages", "Tagend.Jobs", "Tagend.Workshop"],
        [Program] = ["Tagend.Core", "Tagend.Qr", "Tagend.Print", "Tagend.Pages", "Tagend.Jobs", "Tagend.Workshop", "Tagend.Station"],
    };

    private static readonly string[] Clocks = ["get_Now", "get_UtcNow", "get_Today"];

    private static readonly House Built = new ArchLoader()
        .LoadFilteredDirectory(AppContext.BaseDirectory, "*agend*.dll")
        .Build();

    /// <summary>Every use of a type by another, in code of ours.</summary>
    private static IEnumerable<ITypeDependency> Uses => Built.Types.Where(t => Allowed.ContainsKey(ProjectOf(t))).SelectMany(t => t.Dependencies);

    public static TheoryData<string> Projects => [.. Allowed.Keys];

    [Theory]
    [MemberData(nameof(Projects))]
    public void Project_AnyType_RefersToProjectsBelowIt(string project)
    {
        Assert.Contains(Built.Types, t => ProjectOf(t) == project);
        Assert.Empty(Uses
            .Where(u => ProjectOf(u.Origin) == project && Allowed.ContainsKey(ProjectOf(u.Target)) && ProjectOf(u.Target) != project)
            .Where(u => !Allowed[project].Contains(ProjectOf(u.Target)))
            .Select(Said));
    }

    [Theory]
    [MemberData(nameof(Projects))]
    public void Folder_OfAProject_IsNotReferredToByWhatItRefersTo(string project)
    {
        var uses = Uses
            .Where(u => ProjectOf(u.Origin) == project && ProjectOf(u.Target) == project && FolderOf(u.Origin) != FolderOf(u.Target))
            .ToLookup(u => FolderOf(u.Origin));
        var circles = uses.SelectMany(u => u).Where(u => Reaches(FolderOf(u.Target), FolderOf(u.Origin)));
        Assert.Empty(circles.Select(Said).Distinct().Order(StringComparer.Ordinal));

        bool Reaches(string from, string to)
        {
            var (seen, left) = (new HashSet<string>(), new Stack<string>([from]));
            while (left.TryPop(out var at))
            {
                if (at == to)
                {
                    return true;
                }

                foreach (var next in uses[at].Select(u => FolderOf(u.Target)).Where(seen.Add))
                {
                    left.Push(next);
                }
            }

            return false;
        }
    }

    [Fact]
    public void Console_IsTheProgramsAlone() => Assert.Empty(
        Uses.Where(u => u.Target.FullName == "System.Console" && ProjectOf(u.Origin) != Program).Select(Said));

    [Fact]
    public void Clock_IsATimeProvider() => Assert.Empty(Uses
        .OfType<MethodCallDependency>()
        .Where(u => u.Target.FullName is "System.DateTime" or "System.DateTimeOffset" && Clocks.Any(c => u.TargetMember.Name.StartsWith(c, StringComparison.Ordinal)))
        .Select(Said));

    private static string ProjectOf(IType type) => type.Assembly?.Name.Split(',')[0] ?? "";

    /// <summary>The namespace; what Razor makes of a page is in one of Razor's, called by the page's folders: Screens_Orders_OrdersPage.</summary>
    private static string FolderOf(IType type)
    {
        const string Razor = "AspNetCoreGeneratedDocument";
        return type.Namespace?.FullName != Razor
            ? type.Namespace?.FullName ?? ""
            : string.Join('.', type.FullName[(Razor.Length + 1)..].Split('+', '/', '<')[0].Split('_').SkipLast(1).Prepend(ProjectOf(type)));
    }

    private static string Said(ITypeDependency use) => $"{use.Origin.FullName} uses {use.Target.FullName}";
}
