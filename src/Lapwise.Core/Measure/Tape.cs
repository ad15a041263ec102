namespace Lapwise.Core.Measure;

/// <summary>What reading a tape or an angle to a step can explain.</summary>
internal static class Tape
{
    /// <summary>Step to which a turn is read with an angle gauge, in radians: one degree (common practice, no source).</summary>
    public const double TurnStepRad = Math.PI / 180;

    /// <summary>
    /// Twice the standard deviation of a sum of readings. One reading to a step is off by anything up to half a step,
    /// evenly, so by step/√12 in the mean square; n independent ones add up to step/√12 · √n, and twice that is step/√3 · √n.
    /// </summary>
    public static double Allowed(double step, double readings) => step / Math.Sqrt(3) * Math.Sqrt(readings);
}
