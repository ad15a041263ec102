using System.Xml.Linq;

namespace Lapwise.Architecture.Tests;

/// <summary>What the projects may use of one another and of others' work, and that the law of the build holds in each.</summary>
public sealed class ProjectsTests
{
    /// <summary>Which projects of the product each may refer to. A new project gets its row here first.</summary>
    private static readonly Dictionary<string, string[]> MayUse = new(StringComparer.Ordinal)
    {
        ["Lapwise.Core"] = [],
        ["Lapwise.Wire"] = [],
        ["Lapwise.Verifier"] = ["Lapwise.Core"],
        ["Lapwise.Scheduling"] = ["Lapwise.Core"],
        ["Lapwise.Drawings"] = ["Lapwise.Core"],
        ["Lapwise.Documents"] = ["Lapwise.Core", "Lapwise.Drawings"],
        ["Lapwise.Files"] = ["Lapwise.Core"],
        ["Lapwise.Store"] = ["Lapwise.Core"],
        ["Lapwise.Client"] = ["Lapwise.Core", "Lapwise.Wire", "Lapwise.Drawings"],
        ["Lapwise.Server"] = ["Lapwise.Core", "Lapwise.Wire", "Lapwise.Drawings", "Lapwise.Documents", "Lapwise.Files", "Lapwise.Store", "Lapwise.Scheduling", "Lapwise.Client"],
        ["Lapwise.Cli"] = ["Lapwise.Core", "Lapwise.Drawings", "Lapwise.Documents", "Lapwise.Files", "Lapwise.Verifier", "Lapwise.Scheduling"],
    };

    /// <summary>Yardsticks and rivals: they measure the product and are no part of it.</summary>
    private static readonly string[] OnlyBesideTheProduct = ["UnitsNet", "BenchmarkDotNet", "CsCheck", "Mono.Cecil", "ZXing.Net"];

    private static readonly IReadOnlyList<string> ProjectFiles = [.. Repository.Files.Where(f => f.EndsWith(".csproj", StringComparison.Ordinal))];

    private static readonly IReadOnlyList<Project> Product =
        [.. ProjectFiles.Where(f => f.StartsWith("src/", StringComparison.Ordinal)).Select(f => Project.Parse(f, Repository.Read(f)))];

    [Fact]
    public void Every_project_is_in_the_solution()
    {
        var listed = XDocument.Parse(Repository.Read("Lapwise.slnx")).Descendants("Project").Select(p => (string)p.Attribute("Path")!);

        Assert.Equal(ProjectFiles.Order(StringComparer.Ordinal), listed.Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Projects_of_the_product_use_only_what_their_row_allows()
    {
        Assert.NotEmpty(Product);
        Assert.Empty(Strayed(Product));
    }

    [Fact]
    public void A_reference_that_no_row_allows_is_caught()
    {
        Project[] offenders =
        [
            new("Lapwise.Client", ["Lapwise.Core", "Lapwise.Store"], []),
            new("Lapwise.Core", [], ["UnitsNet"]),
            new("Lapwise.Unlisted", [], []),
        ];

        Assert.Equal(
            ["Lapwise.Client uses Lapwise.Store", "Lapwise.Core uses UnitsNet", "Lapwise.Unlisted has no row in MayUse"],
            Strayed(offenders));
    }

    [Fact]
    public void The_core_rests_on_one_library_only() =>
        Assert.Equal(["NetTopologySuite"], Product.Single(p => p.Name == "Lapwise.Core").Packages);

    [Fact]
    public void No_project_loosens_the_law_of_the_build()
    {
        var root = XDocument.Parse(Repository.Read("Directory.Build.props"));
        Assert.Equal("enable", root.Descendants("Nullable").Single().Value);
        Assert.Equal("true", root.Descendants("TreatWarningsAsErrors").Single().Value);
        Assert.Equal("true", root.Descendants("RestorePackagesWithLockFile").Single().Value);

        var others = Repository.Files.Where(f => f != "Directory.Build.props" && (f.EndsWith(".csproj", StringComparison.Ordinal) || f.EndsWith(".props", StringComparison.Ordinal) || f.EndsWith(".targets", StringComparison.Ordinal)));
        Assert.Empty(others.SelectMany(f => Loosened(f, Repository.Read(f))));
    }

    [Theory]
    [InlineData("x.csproj", "<Project><PropertyGroup><Nullable>disable</Nullable></PropertyGroup></Project>")]
    [InlineData("x.csproj", "<Project><PropertyGroup><TreatWarningsAsErrors>false</TreatWarningsAsErrors></PropertyGroup></Project>")]
    [InlineData("x.csproj", "<Project><PropertyGroup><NoWarn>CS8602</NoWarn></PropertyGroup></Project>")]
    [InlineData("x.csproj", "<Project><ItemGroup><PackageReference Include=\"A\" Version=\"1\" /></ItemGroup></Project>")]
    [InlineData("src/Directory.Build.props", "<Project><PropertyGroup /></Project>")]
    public void Loosening_is_caught(string path, string xml) => Assert.NotEmpty(Loosened(path, xml));

    [Fact]
    public void Every_project_has_its_lock_file() =>
        Assert.All(ProjectFiles, f => Assert.Contains(f[..(f.LastIndexOf('/') + 1)] + "packages.lock.json", Repository.Files));

    private static IReadOnlyList<string> Strayed(IEnumerable<Project> projects) =>
    [
        .. projects.SelectMany(p => MayUse.TryGetValue(p.Name, out var allowed)
            ? p.References.Except(allowed, StringComparer.Ordinal)
                .Concat(p.Packages.Intersect(OnlyBesideTheProduct, StringComparer.Ordinal))
                .Select(r => $"{p.Name} uses {r}")
            : [$"{p.Name} has no row in MayUse"]),
    ];

    private static IEnumerable<string> Loosened(string path, string xml)
    {
        string[] law = ["Nullable", "TreatWarningsAsErrors", "WarningLevel", "NoWarn", "WarningsNotAsErrors", "AnalysisLevel", "RunAnalyzers", "RestorePackagesWithLockFile", "ManagePackageVersionsCentrally"];
        var document = XDocument.Parse(xml);
        var own = path == "Directory.Packages.props" ? ["ManagePackageVersionsCentrally"] : Array.Empty<string>();
        var set = document.Descendants().Select(e => e.Name.LocalName).Intersect(law, StringComparer.Ordinal).Except(own, StringComparer.Ordinal).Select(n => $"{path} sets {n}");
        var versions = document.Descendants("PackageReference").Where(p => p.Attribute("Version") is not null).Select(p => $"{path} gives {(string?)p.Attribute("Include")} a version of its own");
        var cutsOff = path.EndsWith("/Directory.Build.props", StringComparison.Ordinal) && !document.Descendants("Import").Any(i => ((string?)i.Attribute("Project"))?.Contains("GetPathOfFileAbove", StringComparison.Ordinal) == true);
        return [.. set, .. versions, .. cutsOff ? [$"{path} hides the one above it"] : Array.Empty<string>()];
    }

    /// <param name="References">Names of the projects it refers to.</param>
    /// <param name="Packages">What it ships with; packages that only help the build are left out.</param>
    private sealed record Project(string Name, IReadOnlyList<string> References, IReadOnlyList<string> Packages)
    {
        public static Project Parse(string path, string xml)
        {
            var document = XDocument.Parse(xml);
            return new(
                Path.GetFileNameWithoutExtension(path),
                [.. document.Descendants("ProjectReference").Select(r => Path.GetFileNameWithoutExtension(((string)r.Attribute("Include")!).Replace('\\', '/')))],
                [.. document.Descendants("PackageReference").Where(p => (string?)p.Attribute("PrivateAssets") != "all").Select(p => (string)p.Attribute("Include")!)]);
        }
    }
}
