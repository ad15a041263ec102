// Code that breaks each rule on purpose, so that a rule which stops seeing is noticed.
#pragma warning disable // Offenders: their whole point is to be wrong.
namespace Lapwise.Architecture.Tests.Offenders
{
    public sealed class Everything { public static int Count() => 1; }
}

namespace Lapwise.Architecture.Tests.Offenders.Explain
{
    public sealed class InTheWords { public object Make() => new Measure.Taped(); }
}

namespace Lapwise.Architecture.Tests.Offenders.Measure
{
    public sealed class Taped { public static int Read() => 2; }
    public sealed class LooksLeft { public int Take(Explain.InTheWords words) => words.GetHashCode(); }
}

namespace Lapwise.Architecture.Tests.Offenders.Work
{
    public sealed class Ordered { public static int Search() => 3; public static T Make<T>() where T : new() => new(); }
    [AttributeUsage(AttributeTargets.All)] public sealed class OrderedAttribute : Attribute;
    public sealed class LooksLeft { public int Take() => Measure.Taped.Read(); }
}

namespace Lapwise.Architecture.Tests.Offenders.Materials
{
    using Work;

    public sealed class InAField { private Ordered? kept; }
    public sealed class InASignature { public void Take(Ordered[] all) { } }
    public sealed class InABody { public int Take() => Ordered.Search() + 1; }
    public sealed class InALambda { public Func<int> Take(int more) => () => Ordered.Search() + more; }
    public sealed class InAnIterator { public IEnumerable<int> Take() { yield return Ordered.Search(); } }
    public sealed class InAGenericArgument { public object Take() => new List<Ordered>(); }
    public sealed class InAnAttribute { [Ordered] public int Take() => 1; }
    public sealed class ToTheWholeJob { public int Take() => Everything.Count(); }
}

namespace Lapwise.Architecture.Tests.Offenders.Sundries
{
    public sealed class InNoKnownFolder { public int Take() => Measure.Taped.Read(); }
}

namespace Lapwise.Architecture.Tests.Offenders.Impure
{
    public sealed class ReadsTheClock { public long Take() => DateTime.UtcNow.Ticks; }
    public sealed class ReadsAFile { public string Take() => File.ReadAllText("x"); }
    public sealed class Prints { public void Take() => Console.WriteLine(); }
    public sealed class DrawsUnseeded { public int Take() => new Random().Next(); }
    public sealed class DrawsShared { public int Take() => Random.Shared.Next(); }
    public sealed class StartsAThread { public void Take() => new Thread(() => { }).Start(); }
    public sealed class RunsATask { public Task Take() => Task.Run(() => { }); }
    public sealed class TimesItself { public object Take() => System.Diagnostics.Stopwatch.StartNew(); }
    public sealed class AsksTheMachine { public int Take() => Environment.ProcessorCount; }
    public sealed class InAnIterator { public IEnumerable<long> Take() { yield return DateTime.Now.Ticks; } }
    public sealed class KeepsACount { private static int count; public int Take() => ++count; }
    public sealed class KeepsAProperty { public static int Count { get; set; } }
    public sealed class KeepsAList { private static readonly List<int> Seen = []; public void Take() => Seen.Add(1); }
    public sealed class IsPure
    {
        private static readonly double[] Table = [1, 2];
        private const int Limit = 3;
        public IEnumerable<int> Take(int seed) { yield return new Random(seed).Next(Limit) + (int)Table[0]; }
    }
}

namespace Lapwise.Architecture.Tests.Offenders.Checking
{
    public sealed class AsksTheSearch { public object Take() => Lapwise.Core.Work.Order.OrderSearch.Solve(null!); }
    public sealed class TakesTheSearchsRecord { public void Take(IReadOnlyList<Lapwise.Core.Work.Section> sections) { } }
    public sealed class ReadsTheAnswer { public Lapwise.Core.Answers.PlanAnswer? Read; }
}
