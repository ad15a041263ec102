namespace Lapwise.Core.Conditions.Exotherm;

/// <summary>What a mixed batch stands in: it decides how much surface the heat can leave through.</summary>
public abstract record Vessel
{
    private Vessel() { }

    /// <summary>Surface that loses heat, m², of a volume of mix.</summary>
    /// <param name="volumeMl">Above 0.</param>
    public abstract double AreaM2(double volumeMl);

    /// <summary>
    /// An upright cup or bucket: bottom, wetted wall and open top. Without a diameter it is as wide as the mix is deep,
    /// which of all upright cylinders has the least surface, so the shortest life.
    /// </summary>
    public sealed record Bucket(double? DiameterM = null) : Vessel
    {
        public override double AreaM2(double volumeMl)
        {
            var volumeM3 = volumeMl * 1e-6;
            var diameterM = DiameterM ?? Math.Cbrt(4 * volumeM3 / Math.PI);
            return (Math.PI * diameterM * diameterM / 2) + (4 * volumeM3 / diameterM);
        }
    }

    /// <summary>Poured out flat: the tray's floor below and the open top above; the wall is left out.</summary>
    public sealed record Tray(double FloorM2) : Vessel
    {
        public override double AreaM2(double volumeMl) => 2 * FloorM2;
    }
}
