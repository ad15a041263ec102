using Lapwise.Core.Explain;

namespace Lapwise.Documents.Parts;

/// <summary>Who hands a paper to whom.</summary>
internal static class PartiesPart
{
    /// <param name="givenBy">Blank: not named.</param>
    /// <param name="customer">Null or blank: not named.</param>
    public static IEnumerable<Block> Blocks(string? givenBy, string? customer, Voice voice)
    {
        if (!string.IsNullOrWhiteSpace(givenBy)) yield return new Block.Paragraph(voice.Say($"From {givenBy.Trim()}", $"De {givenBy.Trim()}"));
        if (!string.IsNullOrWhiteSpace(customer)) yield return new Block.Paragraph(voice.Say($"For {customer.Trim()}", $"Para {customer.Trim()}"));
    }
}
