using System.Text;
using Lapwise.Core.Explain;

namespace Lapwise.Cli;

/// <summary>
/// Keeps numbers with their units in the cells of a table: the table library ends lines at every kind of space, so such a gap is
/// a sign that is none until it is written, here, as an ordinary space.
/// </summary>
internal sealed class HeldGaps(TextWriter writer) : TextWriter
{
    private const char Held = '\uE000';

    public static string Hold(string cell) => UnitGap.Keep(cell).Replace(UnitGap.NoBreak, Held);

    public override Encoding Encoding => writer.Encoding;

    public override void Write(char value) => writer.Write(value == Held ? ' ' : value);

    public override void Write(string? value) => writer.Write(value?.Replace(Held, ' '));

    public override void Flush() => writer.Flush();
}
