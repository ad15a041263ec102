using Lapwise.Benchmarks;

const string Usage = """
    Lapwise.Benchmarks COMMAND [--seed N] [--limit SECONDS] [--each N] [--sizes 12,16,…] [--folder bench]

      orders    exact order for one person, beside CP-SAT on the same instances
      crews     two to four people, beside CP-SAT on the same instances
      usual     two hundred kitchens: the plan and the usual ways, by open time
      grid      proof time on twenty 4 × 10 grids with mixed times
      takeoff   reading and taking off a kitchen of twelve tops
      science   pot life by heat, its fit, and a day hour by hour
      purchase  kits for many jobs together, their cover beside CP-SAT
      schedule  published project scheduling beside a plain model, and thirty jobs; --folder holds the instances
      packet    the PDF packet of a job of twelve tops
      curve     time and memory against the number of sections, to 400

    Reports go to FOLDER/reports, instances to FOLDER/instances. Run from the root of the repository, built in Release,
    with nothing else running.
    """;

var commands = new Dictionary<string, Action<Options>>(StringComparer.Ordinal)
{
    ["orders"] = Contest.Run,
    ["crews"] = Crews.Run,
    ["usual"] = UsualWays.Run,
    ["grid"] = Curves.Grid4x10,
    ["takeoff"] = Curves.TakeOff,
    ["science"] = Science.Run,
    ["purchase"] = Purchases.Run,
    ["schedule"] = Calendars.Run,
    ["packet"] = Packets.Run,
    ["curve"] = Curves.BySections,
};

if (args is not [var name, .. var rest] || !commands.TryGetValue(name, out var command))
{
    Console.Error.WriteLine(Usage);
    return 2;
}

try
{
    command(Options.Parse(rest));
    return 0;
}
catch (FormatException wrong)
{
    Console.Error.WriteLine(wrong.Message);
    return 2;
}
