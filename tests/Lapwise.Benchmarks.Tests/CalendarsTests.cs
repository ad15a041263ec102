namespace Lapwise.Benchmarks.Tests;

/// <summary>Where the instances of the schedule benchmark are looked for.</summary>
public sealed class CalendarsTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("lapwise-").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Fact]
    public void An_instance_named_in_the_list_beside_it_is_found()
    {
        var set = Directory.CreateDirectory(Path.Combine(folder, "j30")).FullName;
        File.WriteAllText(Path.Combine(set, "one.sm"), "");
        File.WriteAllText(Path.Combine(set, "optimum.csv"), "file,optimum\none.sm, 43\nmissing.sm,47\n");
        Assert.Equal([(Path.Combine(set, "one.sm"), "43", "j30")], Calendars.Published(folder));
    }

    [Theory]
    [InlineData("", "no optimum.csv is there")]
    [InlineData("optimum.csv", "of 1 found, none names a file that is there")]
    public void Where_there_is_none_it_says_what_was_looked_for_and_where_and_what_cures_it(string list, string said)
    {
        if (list.Length > 0) File.WriteAllText(Path.Combine(folder, list), "file,optimum\nmissing.sm,47\n");
        foreach (var place in list.Length > 0 ? [folder] : new[] { folder, Path.Combine(folder, "nowhere") })
        {
            var message = Assert.Throws<FormatException>(() => Calendars.Published(place)).Message;
            foreach (var words in new[] { place, "optimum.csv", "--folder", said }) Assert.Contains(words, message, StringComparison.Ordinal);
        }
    }
}
