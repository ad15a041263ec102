using System.Xml.Linq;
using Lapwise.Core;
using Mono.Cecil;

namespace Lapwise.Architecture.Tests;

/// <summary>
/// The core has no clock, no files, no machine, no unseeded chance, no threads and no memory of its own.
/// <c>eng/BannedSymbols.txt</c> says what is banned; the compiler holds source to it, and these tests hold the
/// compiled code to it, where no suppression helps.
/// </summary>
public sealed class PurityTests
{
    private const string Offenders = "Lapwise.Architecture.Tests.Offenders.Impure";
    private static readonly string Core = typeof(Phases).Assembly.Location;
    private static readonly string Own = typeof(PurityTests).Assembly.Location;
    private static readonly HashSet<string> Banned = Repository.Read("eng/BannedSymbols.txt")
        .Split('\n', StringSplitOptions.RemoveEmptyEntries)
        .Select(line => line.Split(';')[0].Trim())
        .ToHashSet(StringComparer.Ordinal);

    [Fact]
    public void The_core_uses_nothing_that_is_banned() => Assert.Empty(BannedUses(Core, "Lapwise.Core"));

    [Fact]
    public void The_core_keeps_nothing_between_calls() => Assert.Empty(KeptState(Core, "Lapwise.Core"));

    [Theory]
    [InlineData("ReadsTheClock")]
    [InlineData("ReadsAFile")]
    [InlineData("Prints")]
    [InlineData("DrawsUnseeded")]
    [InlineData("DrawsShared")]
    [InlineData("StartsAThread")]
    [InlineData("RunsATask")]
    [InlineData("TimesItself")]
    [InlineData("AsksTheMachine")]
    [InlineData("InAnIterator")]
    public void A_banned_use_is_caught(string name) => Assert.Contains(BannedUses(Own, Offenders), b => b.StartsWith($"{Offenders}.{name}.", StringComparison.Ordinal));

    [Theory]
    [InlineData("KeepsACount")]
    [InlineData("KeepsAProperty")]
    [InlineData("KeepsAList")]
    public void Kept_state_is_caught(string name) => Assert.Contains(KeptState(Own, Offenders), b => b.StartsWith($"{Offenders}.{name}.", StringComparison.Ordinal));

    [Fact]
    public void Pure_code_passes()
    {
        Assert.DoesNotContain(BannedUses(Own, Offenders), b => b.Contains("IsPure", StringComparison.Ordinal));
        Assert.DoesNotContain(KeptState(Own, Offenders), b => b.Contains("IsPure", StringComparison.Ordinal));
    }

    [Fact]
    public void Every_banned_symbol_says_what_to_use_instead() =>
        Assert.All(Repository.Read("eng/BannedSymbols.txt").Split('\n', StringSplitOptions.RemoveEmptyEntries),
            line => Assert.Matches("^[TMPN]:[^;]+;.{10,}$", line));

    [Fact]
    public void The_compiler_holds_the_core_to_the_same_list()
    {
        var project = XDocument.Parse(Repository.Read("src/Lapwise.Core/Lapwise.Core.csproj"));

        Assert.Contains(project.Descendants("AdditionalFiles"), f => ((string?)f.Attribute("Include"))!.EndsWith("eng/BannedSymbols.txt", StringComparison.Ordinal));
        Assert.Contains(project.Descendants("PackageReference"), p => (string?)p.Attribute("Include") == "Microsoft.CodeAnalysis.BannedApiAnalyzers");
    }

    private static IReadOnlyList<string> BannedUses(string assembly, string root) =>
    [
        .. Use.In(assembly)
            .Where(u => u.User.Namespace == root || u.User.Namespace.StartsWith(root + ".", StringComparison.Ordinal))
            .Where(u => !IsIteratorsOwn(u) && Names(u).Any(Banned.Contains))
            .Select(u => $"{u.User.FullName}.{u.Where} uses {u.Used.FullName}")
            .Distinct(StringComparer.Ordinal),
    ];

    /// <summary>The names a use can be banned by: its type, the type's namespace, and the member.</summary>
    private static IEnumerable<string> Names(Use use)
    {
        var type = use.UsedType.FullName.Replace('/', '.');
        yield return $"T:{type}";
        yield return $"N:{use.UsedType.Namespace}";
        if (use.Used is not MethodReference method) yield break;
        if (method.Name.StartsWith("get_", StringComparison.Ordinal)) yield return $"P:{type}.{method.Name[4..]}";
        var arguments = method.Parameters.Count == 0 ? "" : $"({string.Join(',', method.Parameters.Select(p => p.ParameterType.FullName))})";
        yield return $"M:{type}.{method.Name.Replace('.', '#')}{arguments}";
    }

    /// <summary>An iterator asks which thread it was made on; the compiler writes that, nobody else.</summary>
    private static bool IsIteratorsOwn(Use use) =>
        use.Generated && (use.Used.Name == "get_CurrentManagedThreadId" || use.Used.FullName == "System.Environment");

    private static IReadOnlyList<string> KeptState(string assembly, string root)
    {
        using var read = AssemblyDefinition.ReadAssembly(assembly, new ReaderParameters { InMemory = true });
        return
        [
            .. read.MainModule.GetTypes()
                .Where(t => t.FullName.StartsWith(root + ".", StringComparison.Ordinal) && !t.Name.StartsWith('<'))
                .SelectMany(t => t.Fields)
                .Where(f => f.IsStatic && !f.IsLiteral && (!f.IsInitOnly || Changes(f.FieldType)))
                .Select(f => $"{f.DeclaringType.FullName}.{f.Name} can change"),
        ];
    }

    /// <summary>A collection made to be changed; an array is let pass as a table.</summary>
    private static bool Changes(TypeReference type) =>
        type.Namespace is "System.Collections.Generic" or "System.Collections.Concurrent" &&
        !type.Name.StartsWith("IReadOnly", StringComparison.Ordinal) && !type.Name.StartsWith("IEnumerable", StringComparison.Ordinal) &&
        !type.Name.Contains("Comparer", StringComparison.Ordinal);
}
