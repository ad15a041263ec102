using Lapwise.Core;
using Lapwise.Core.Explain;

namespace Lapwise.Architecture.Tests;

/// <summary>A phase may use those to its left in <see cref="Phases.All"/>, never those to its right.</summary>
public sealed class DirectionTests
{
    private const string Offenders = "Lapwise.Architecture.Tests.Offenders";
    private static readonly string Core = typeof(Phases).Assembly.Location;

    [Fact]
    public void No_part_of_the_core_uses_one_to_its_right()
    {
        var (looked, breaches) = Check(Core, "Lapwise.Core");

        Assert.Empty(breaches);
        Assert.True(looked > 100, $"the rule looked at {looked} uses only: it no longer finds the phases");
    }

    [Fact]
    public void Every_phase_has_types_of_its_own()
    {
        var folders = Use.In(Core).Select(u => Folder(u.User.Namespace, "Lapwise.Core")).ToHashSet();

        Assert.All(Phases.All, p => Assert.Contains(p.Folder, folders));
    }

    [Theory]
    [InlineData("InAField")]
    [InlineData("InASignature")]
    [InlineData("InABody")]
    [InlineData("InALambda")]
    [InlineData("InAnIterator")]
    [InlineData("InAGenericArgument")]
    [InlineData("InAnAttribute")]
    [InlineData("ToTheWholeJob")]
    [InlineData("InTheWords")]
    [InlineData("InNoKnownFolder")]
    public void The_rule_catches_an_offender(string name)
    {
        var (_, breaches) = Check(typeof(DirectionTests).Assembly.Location, Offenders);

        Assert.Contains(breaches, b => b.Contains($".{name}", StringComparison.Ordinal));
    }

    [Fact]
    public void The_rule_lets_a_phase_use_those_to_its_left()
    {
        var (_, breaches) = Check(typeof(DirectionTests).Assembly.Location, Offenders);

        Assert.DoesNotContain(breaches, b => b.Contains("LooksLeft", StringComparison.Ordinal));
    }

    [Fact]
    public void The_rule_finds_nothing_where_there_is_nothing()
    {
        var (looked, breaches) = Check(Core, "Lapwise.NoSuchPlace");

        Assert.Equal(0, looked);
        Assert.Empty(breaches);
    }

    private static (int Looked, IReadOnlyList<string> Breaches) Check(string assembly, string root)
    {
        var uses = Use.In(assembly)
            .Select(u => (Use: u, From: Folder(u.User.Namespace, root), To: Folder(NamespaceOf(u), root)))
            .Where(u => u.From is not null && u.To is not null && u.From != u.To)
            .ToList();
        var breaches = uses
            .Where(u => Place(u.From!, u.Use.User.Name) < Place(u.To!, u.Use.UsedType.Name))
            .Select(u => $"{u.Use.User.FullName}.{u.Use.Where} uses {u.Use.UsedType.FullName}")
            .Concat(uses
                .Where(u => Place(u.From!, u.Use.User.Name) == Unknown)
                .Select(u => $"{u.Use.User.FullName} stands in a folder that is no phase and no foundation"))
            .Distinct(StringComparer.Ordinal)
            .ToList();
        return (uses.Count, breaches);
    }

    private const int Unknown = -1;

    /// <summary>Left to right: the words and quantities, the job, the phases, then what sees them all.</summary>
    private static int Place(string folder, string type)
    {
        string[] right = ["Bases", "Quick", "Answers", "Shop", ""];
        if (folder.Length == 0 && type is nameof(Phase) or nameof(Phases)) return 0;
        if (folder is "Quantities" or "Explain") return 0;
        if (folder is "Jobs") return 1;
        var phase = Phases.All.ToList().FindIndex(p => p.Folder == folder);
        if (phase >= 0) return 2 + phase;
        return right.Contains(folder, StringComparer.Ordinal) ? 2 + Phases.All.Count : Unknown;
    }

    /// <summary>The part of a namespace below the root: "" at the root itself, null outside it.</summary>
    private static string? Folder(string space, string root) =>
        space == root ? "" : space.StartsWith(root + ".", StringComparison.Ordinal) ? space[(root.Length + 1)..].Split('.')[0] : null;

    private static string NamespaceOf(Use use)
    {
        var type = use.UsedType;
        while (type.DeclaringType is { } outer) type = outer;
        return type.Namespace;
    }
}
