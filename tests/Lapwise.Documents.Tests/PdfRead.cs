using System.Diagnostics;
using System.Text.RegularExpressions;

namespace Lapwise.Documents.Tests;

/// <summary>A PDF read back by poppler, a reader that knows nothing of how it was written.</summary>
internal sealed partial class PdfRead
{
    private readonly byte[] pdf;
    private readonly Dictionary<string, string> answers = new(StringComparer.Ordinal);

    public PdfRead(byte[] pdf) => this.pdf = pdf;

    /// <summary>The text of each page as it lies on the paper.</summary>
    public IReadOnlyList<string> Pages => [.. Run("pdftotext", "-layout", "-enc", "UTF-8").TrimEnd('\f').Split('\f')];

    /// <summary>Whether the words stand in the PDF; white space does not count, for a reader guesses it from gaps.</summary>
    public bool Says(string words) => Bare(Run("pdftotext", "-enc", "UTF-8")).Contains(Bare(words), StringComparison.Ordinal);

    public static string Bare(string text) => Spaces().Replace(text, "");

    public IReadOnlyList<string> Fonts => [.. Run("pdffonts").Split('\n', StringSplitOptions.RemoveEmptyEntries).Skip(2)];

    public string Info(string name) => Run("pdfinfo").Split('\n').Single(l => l.StartsWith(name + ":", StringComparison.Ordinal))[(name.Length + 1)..].Trim();

    /// <summary>The parts in the order a reader that speaks is told them: what each is, and its words.</summary>
    public IReadOnlyList<(string Kind, string Words)> Parts
    {
        get
        {
            var parts = new List<(string Kind, string Words)>();
            foreach (var line in Run("pdfinfo", "-struct-text").Split('\n').Select(l => l.Trim()))
            {
                if (line.StartsWith('"')) parts[^1] = (parts[^1].Kind, parts[^1].Words + line[1..^1]);
                else if (line.Length > 0 && line[0] != '/') parts.Add((line.Split(' ', ':')[0], ""));
            }
            return parts;
        }
    }

    /// <summary>Words that lie over one another or run off the paper's margin, as they lie on their page.</summary>
    public IReadOnlyList<string> Collisions(double margin)
    {
        List<string> collisions = [];
        foreach (var page in Run("pdftotext", "-bbox", "-enc", "UTF-8").Split("<page ").Skip(1))
        {
            double Number(string from) => double.Parse(from, System.Globalization.CultureInfo.InvariantCulture);
            var right = Number(PageWidth().Match(page).Groups["width"].Value) - margin;
            var words = BoxedWord().Matches(page).Select(m => (Left: Number(m.Groups["left"].Value), Top: Number(m.Groups["top"].Value), Right: Number(m.Groups["right"].Value), Bottom: Number(m.Groups["bottom"].Value), Text: m.Groups["text"].Value)).ToList();
            collisions.AddRange(words.Where(w => w.Right > right + 1).Select(w => $"{w.Text} beyond the margin"));
            for (var i = 0; i < words.Count; i++)
                collisions.AddRange(words.Skip(i + 1).Where(w => Math.Min(w.Right, words[i].Right) - Math.Max(w.Left, words[i].Left) > 1 && Math.Min(w.Bottom, words[i].Bottom) - Math.Max(w.Top, words[i].Top) > 4).Select(w => $"{words[i].Text} over {w.Text}"));
        }

        return collisions;
    }

    private string Run(string program, params string[] options)
    {
        var question = string.Join(' ', [program, .. options]);
        return answers.TryGetValue(question, out var known) ? known : answers[question] = Ask(program, options);
    }

    private string Ask(string program, string[] options)
    {
        var file = Path.GetTempFileName();
        try
        {
            File.WriteAllBytes(file, pdf);
            var start = new ProcessStartInfo(program) { RedirectStandardOutput = true, RedirectStandardError = true, UseShellExecute = false };
            foreach (var option in options) start.ArgumentList.Add(option);
            start.ArgumentList.Add(file);
            if (program == "pdftotext") start.ArgumentList.Add("-");
            using var process = Process.Start(start)!;
            var output = process.StandardOutput.ReadToEnd();
            var errors = process.StandardError.ReadToEnd();
            process.WaitForExit();
            return process.ExitCode == 0 && errors.Length == 0 ? output : throw new InvalidDataException($"{program}: {errors}");
        }
        finally
        {
            File.Delete(file);
        }
    }

    [GeneratedRegex("^width=\"(?<width>[\\d.]+)", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, 30_000)]
    private static partial Regex PageWidth();

    [GeneratedRegex("""<word xMin="(?<left>[\d.]+)" yMin="(?<top>[\d.]+)" xMax="(?<right>[\d.]+)" yMax="(?<bottom>[\d.]+)">(?<text>[^<]*)<""", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, 30_000)]
    private static partial Regex BoxedWord();

    [GeneratedRegex(@"\s+", RegexOptions.CultureInvariant, 30_000)]
    private static partial Regex Spaces();
}
