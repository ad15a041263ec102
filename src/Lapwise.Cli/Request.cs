using Lapwise.Core.Explain;

namespace Lapwise.Cli;

/// <summary>One call of the program as it was written.</summary>
/// <param name="Files">What stands beside the command, in order; <c>-</c> is the standard input.</param>
/// <param name="Language">Null where not asked for: then the job's own, or English.</param>
/// <param name="Units">Null where not asked for: then the job's own, or US.</param>
/// <param name="Products">Folder of products; null: <c>products</c> beside the job.</param>
/// <param name="OutFile">Where a command that makes a file puts it.</param>
public sealed record Request(
    string Command,
    IReadOnlyList<string> Files,
    bool Json,
    bool Help,
    Language? Language,
    UnitSystem? Units,
    string? Products,
    string? OutFile)
{
    /// <summary>Each number with its inputs, formula and source.</summary>
    public bool Explain { get; init; }

    /// <summary>With the plan, the chance that it goes wrong.</summary>
    public bool Risk { get; init; }

    /// <summary>How many crews the days of many jobs are shared by; null: one.</summary>
    public int? Crews { get; init; }

    /// <summary>File of crews, gear and days lost; null: crews by number alone.</summary>
    public string? Shop { get; init; }

    /// <summary>With the plan, what would make it work.</summary>
    public bool Remedies { get; init; }

    /// <summary>File of the shop's rates; null: <c>rates.yaml</c> beside the job.</summary>
    public string? Rates { get; init; }

    /// <summary>File of the shelf's log; null: the shelf is empty.</summary>
    public string? Shelf { get; init; }

    /// <summary>The chance of not running short, as written; null: the usual.</summary>
    public string? Chance { get; init; }

    /// <summary>Which paper instead of the job sheet; null: the job sheet.</summary>
    public string? Paper { get; init; }

    /// <summary>How to speak where no job says it.</summary>
    public Voice Voice => new(Language ?? Core.Explain.Language.English, Units ?? UnitSystem.Us);

    /// <summary>Reads the words of the command line; every fault of them is said.</summary>
    public static (Request Request, IReadOnlyList<Fault> Faults) Read(IReadOnlyList<string> words)
    {
        var (request, faults) = (new Request("", [], Json: false, Help: false, null, null, null, null), new List<Fault>());
        var optionsEnded = false;
        for (var i = 0; i < words.Count; i++)
        {
            var (name, value) = Split(words[i]);
            string Value() => value ?? (++i < words.Count ? words[i] : "");
            if (optionsEnded || !name.StartsWith('-') || name == "-")
            {
                request = request.Command.Length == 0 ? request with { Command = words[i] } : request with { Files = [.. request.Files, words[i]] };
                continue;
            }

            switch (name)
            {
                case "--":
                    optionsEnded = true;
                    break;
                case "--json":
                    request = request with { Json = true };
                    break;
                case "--explain":
                    request = request with { Explain = true };
                    break;
                case "--risk":
                    request = request with { Risk = true };
                    break;
                case "--remedies":
                    request = request with { Remedies = true };
                    break;
                case "-h" or "--help":
                    request = request with { Help = true };
                    break;
                case "--lang":
                    request = request with { Language = OneOf(name, Value(), faults, ("en", Core.Explain.Language.English), ("es", Core.Explain.Language.Spanish)) };
                    break;
                case "--units":
                    request = request with { Units = OneOf(name, Value(), faults, ("us", UnitSystem.Us), ("metric", UnitSystem.Metric)) };
                    break;
                case "--products":
                    request = request with { Products = Given(name, Value(), faults) };
                    break;
                case "--crews":
                    request = request with { Crews = Count(name, Value(), faults) };
                    break;
                case "--shop":
                    request = request with { Shop = Given(name, Value(), faults) };
                    break;
                case "--out":
                    request = request with { OutFile = Given(name, Value(), faults) };
                    break;
                case "--rates":
                    request = request with { Rates = Given(name, Value(), faults) };
                    break;
                case "--paper":
                    request = request with { Paper = Given(name, Value(), faults) };
                    break;
                case "--shelf":
                    request = request with { Shelf = Given(name, Value(), faults) };
                    break;
                case "--chance":
                    request = request with { Chance = Given(name, Value(), faults) };
                    break;
                default:
                    faults.Add(new Fault(name, "OptionUnknown",
                        v => v.Say("There is no such option.", "No existe esa opción."),
                        v => v.Say("See `lapwise help`.", "Vea `lapwise help`.")));
                    break;
            }
        }

        return (request, faults);
    }

    private static (string Name, string? Value) Split(string word)
    {
        var equals = word.StartsWith("--", StringComparison.Ordinal) ? word.IndexOf('=') : -1;
        return equals < 0 ? (word, null) : (word[..equals], word[(equals + 1)..]);
    }

    private static T? OneOf<T>(string option, string word, List<Fault> faults, params ReadOnlySpan<(string Word, T Value)> choices) where T : struct
    {
        var words = new List<string>();
        foreach (var choice in choices)
        {
            if (choice.Word == word) return choice.Value;
            words.Add(choice.Word);
        }

        faults.Add(new Fault(option, "OptionValueUnknown",
            v => v.Say($"\"{word}\" is not a choice here.", $"«{word}» no es una opción válida."),
            v => v.Say($"Use {string.Join(" or ", words)}.", $"Use {string.Join(" o ", words)}.")));
        return null;
    }

    private static int? Count(string option, string word, List<Fault> faults)
    {
        if (int.TryParse(word, System.Globalization.NumberStyles.None, System.Globalization.CultureInfo.InvariantCulture, out var count) && count is >= 1 and <= 20) return count;
        faults.Add(new Fault(option, "OptionValueUnknown",
            v => v.Say($"\"{word}\" is not a choice here.", $"«{word}» no es una opción válida."),
            v => v.Say("Use a number from 1 to 20.", "Use un número de 1 a 20.")));
        return null;
    }

    private static string? Given(string option, string word, List<Fault> faults)
    {
        if (word.Length > 0) return word;
        faults.Add(new Fault(option, "OptionValueMissing",
            v => v.Say("A value must follow.", "Debe seguir un valor."),
            v => v.Say("See `lapwise help`.", "Vea `lapwise help`.")));
        return null;
    }
}
