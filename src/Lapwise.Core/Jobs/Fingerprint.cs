using System.Security.Cryptography;
using System.Text;

namespace Lapwise.Core.Jobs;

/// <summary>What a thing given out was made from, in one short word: SHA-256 over the documents as JSON (FIPS 180-4).</summary>
public static class Fingerprint
{
    /// <summary>Sixty-four hex digits; the same documents give the same ones on every machine.</summary>
    public static string Of(JobDocument job, IEnumerable<ProductDocument> products, RatesDocument rates, IEnumerable<VisitDocument>? settled = null) =>
        OfText(string.Join('\n',
        [
            JobFile.Write(job), .. products.OrderBy(p => p.Id, StringComparer.Ordinal).Select(JobFile.Write), JobFile.Write(rates),
            .. (settled ?? []).Select(v => $"{v.Id} {v.From}"),
        ]));

    public static string OfText(string text) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text)));

    /// <summary>As it is printed: twelve digits at most, in groups, enough to tell two papers of a shop apart and to be read out.</summary>
    public static string Printed(string whole) => string.Join(' ', whole.Chunk(4).Take(3).Select(c => new string(c)));
}
