using System.Globalization;
using System.Xml.Linq;

namespace Lapwise.Drawings.Tests;

/// <summary>Reads a drawing back from its SVG text, the way a viewer would, knowing nothing of how it was made.</summary>
internal sealed class Read(string svg)
{
    private readonly XElement root = XDocument.Parse(svg).Root!;

    public IReadOnlyList<XElement> Texts => [.. Named("text")];
    public IReadOnlyList<string> Words => [.. Texts.Select(t => t.Value)];
    public IEnumerable<XElement> OfClass(string name) => root.Descendants().Where(e => (string?)e.Attribute("class") == name);
    public IEnumerable<XElement> Named(string name) => root.Descendants().Where(e => e.Name.LocalName == name);
    public double Width => Value(root, "width");
    public double Height => Value(root, "height");

    public static double Value(XElement element, string name) => double.Parse(element.Attribute(name)!.Value, CultureInfo.InvariantCulture);

    /// <summary>The numbers of a path, two by two.</summary>
    public static IReadOnlyList<Spot> Points(XElement path)
    {
        var numbers = path.Attribute("d")!.Value.Split(['M', 'L', 'Z', ' '], StringSplitOptions.RemoveEmptyEntries)
            .Select(n => double.Parse(n, CultureInfo.InvariantCulture)).ToList();
        return [.. numbers.Chunk(2).Select(p => new Spot(p[0], p[1]))];
    }
}
