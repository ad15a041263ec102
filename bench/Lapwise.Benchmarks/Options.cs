using System.Globalization;

namespace Lapwise.Benchmarks;

/// <param name="LimitS">Time limit of each solver on each instance, seconds.</param>
/// <param name="Each">Instances of each family at each size.</param>
/// <param name="Folder">Where <c>instances</c> and <c>reports</c> are written.</param>
public sealed record Options(int Seed, double LimitS, int Each, IReadOnlyList<int> Sizes, string Folder)
{
    /// <exception cref="FormatException">An unknown option, or a value that is no number.</exception>
    public static Options Parse(IReadOnlyList<string> args)
    {
        var options = new Options(1, 60, 5, Families.Sizes, "bench");
        for (var i = 0; i < args.Count; i += 2)
        {
            var value = i + 1 < args.Count ? args[i + 1] : throw new FormatException($"{args[i]} needs a value");
            options = args[i] switch
            {
                "--seed" => options with { Seed = Whole(value) },
                "--limit" => options with { LimitS = Whole(value) },
                "--each" => options with { Each = Whole(value) },
                "--sizes" => options with { Sizes = [.. value.Split(',').Select(Whole)] },
                "--folder" => options with { Folder = value },
                _ => throw new FormatException($"unknown option {args[i]}"),
            };
        }

        return options;
    }

    private static int Whole(string text) => int.Parse(text, CultureInfo.InvariantCulture);
}
