using System.Text.RegularExpressions;

namespace Lapwise.Architecture.Tests;

/// <summary>What no text of the project may say, and what the standing documents must.</summary>
public sealed partial class TextTests
{
    private const RegexOptions Plain = RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture;
    private static readonly string[] Read = [".cs", ".razor", ".html", ".js", ".css", ".json", ".yaml", ".yml", ".md", ".svg", ".props", ".targets", ".csproj", ".slnx", ".txt", ".sh", ""];

    private static readonly IReadOnlyList<string> Texts =
        [.. Repository.Files.Where(f => Read.Contains(Path.GetExtension(f), StringComparer.Ordinal) && !f.EndsWith("packages.lock.json", StringComparison.Ordinal))];

    private static readonly string[] Spoken = ["src/", "docs/", "samples/", "README.md", "CHANGELOG.md"];

    /// <summary>
    /// The program defers to the safety data sheet and never promises that a thing will not hurt someone.
    /// There is no list of exceptions: say what is known instead. Comments in code are not read by that person.
    /// </summary>
    [Fact]
    public void Nothing_a_person_reads_promises_safety()
    {
        var spoken = Texts.Where(f => Spoken.Any(s => f.StartsWith(s, StringComparison.Ordinal))).ToList();

        Assert.NotEmpty(spoken);
        Assert.Empty(spoken.SelectMany(f => Lines(f, Promise())));
    }

    [Theory]
    [InlineData("It is safe to walk on.")]
    [InlineData("Safely stored")]
    [InlineData("A food-safe finish.")]
    [InlineData("Es seguro pisarlo.")]
    [InlineData("Ya son seguras.")]
    public void A_promise_of_safety_is_caught(string text) => Assert.Matches(Promise(), text);

    [Theory]
    [InlineData("See the safety data sheet.")]
    [InlineData("Consulte la ficha de datos de seguridad.")]
    [InlineData("padding: env(safe-area-inset-bottom);")]
    [InlineData("    // thread-safe by design")]
    public void Other_words_are_let_pass(string text) => Assert.DoesNotMatch(Promise(), text);

    [Fact]
    public void No_text_names_a_place_on_one_machine() => Assert.Empty(Texts.SelectMany(f => Lines(f, MachinePlace())));

    [Theory]
    [InlineData("/ho" + "me/someone/x")]
    [InlineData("see /ro" + "ot/x")]
    [InlineData("C:\\Us" + "ers\\x")]
    [InlineData("/wo" + "rk/main/x")]
    public void A_place_on_one_machine_is_caught(string text) => Assert.Matches(MachinePlace(), text);

    [Fact]
    public void No_text_names_the_host_of_a_package_registry() => Assert.Empty(Texts.SelectMany(f => Lines(f, RegistryHost())));

    [Theory]
    [InlineData("https://api.nuget" + ".org/v3")]
    [InlineData("registry.npmjs" + ".org")]
    public void The_host_of_a_registry_is_caught(string text) => Assert.Matches(RegistryHost(), text);

    /// <summary>A warning that is switched off says why on the same line; migrations are written by the database tooling.</summary>
    [Fact]
    public void Every_switched_off_warning_says_why()
    {
        var code = Texts.Where(f => (f.EndsWith(".cs", StringComparison.Ordinal) || f.EndsWith(".razor", StringComparison.Ordinal)) && !f.Contains("/Migrations/", StringComparison.Ordinal)).ToList();

        Assert.NotEmpty(code);
        Assert.Empty(code.SelectMany(f => Lines(f, BareSuppression())));
    }

    [Theory]
    [InlineData("#pragma warning " + "disable CS0168")]
    [InlineData("[Suppress" + "Message(\"A\", \"B\")]")]
    public void A_warning_switched_off_without_a_word_is_caught(string text) => Assert.Matches(BareSuppression(), text);

    [Fact]
    public void The_source_stands_in_the_folder_that_its_namespace_names()
    {
        var core = Texts.Where(f => f.StartsWith("src/Lapwise.Core/", StringComparison.Ordinal) && f.EndsWith(".cs", StringComparison.Ordinal)).ToList();

        Assert.NotEmpty(core);
        Assert.All(core, f => Assert.Matches($@"(?m)^namespace {Regex.Escape(Path.GetDirectoryName(f)!.Replace('\\', '/')["src/".Length..].Replace('/', '.'))};", Repository.Read(f)));
    }

    private static IEnumerable<string> Lines(string file, Regex pattern) =>
        Repository.Read(file).Split('\n').Index().Where(l => pattern.IsMatch(l.Item)).Select(l => $"{file}:{l.Index + 1}: {l.Item.Trim()}");

    [GeneratedRegex(@"^(?!\s*//).*\b(safe(ly)?(?!-area)|segur[oa]s?)\b", RegexOptions.IgnoreCase | Plain, 30_000)]
    private static partial Regex Promise();

    [GeneratedRegex(@"(?<![\w.}])/(home/\w|root/|work/(main|shared|\.))|[A-Z]:\\Users", Plain, 30_000)]
    private static partial Regex MachinePlace();

    [GeneratedRegex(@"nuget\.org|npmjs\.(org|com)|pypi\.org|crates\.io|deb\.debian\.org", RegexOptions.IgnoreCase | Plain, 30_000)]
    private static partial Regex RegistryHost();

    [GeneratedRegex(@"^\s*#pragma warning disable(?!.*//)|SuppressMessage\((?!.*Justification)", Plain, 30_000)]
    private static partial Regex BareSuppression();
}
