namespace Swapwright.Worksheets.Torques;

/// <summary>
/// Preload and the torque that gives it. Newtons, metres, pascals, newton metres. Friction scatters more than anything else here: the
/// worksheet tells by how much beside each torque.
/// </summary>
public static class TighteningTorque
{
    /// <summary>Preload as a share of the proof load: F = s σₚ Aₛ (75 % as in the tables of the Martin guide, page 10, and cncexpo.com).</summary>
    public static double Preload(MetricThread thread, double proof, double share) => share * proof * thread.StressArea;

    /// <summary>
    /// T = K F d (Mechanical Fastening, Joining and Assembly, page 85: 0.190 in and 1275 lb give 48.5 lb in with K 0.20). K gathers
    /// the friction of thread and head, most of what is put in; the thread's slope takes about a tenth.
    /// </summary>
    public static double Torque(double nutFactor, double preload, double diameter) => nutFactor * preload * diameter;
}
