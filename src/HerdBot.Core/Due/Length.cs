namespace HerdBot.Core.Due;

/// <summary>One pregnancy's length on record, as it deviates from its species and, where the mating's day is known, from its season.</summary>
/// <param name="Days">As counted.</param>
/// <param name="Deviation">In days; positive: longer.</param>
/// <param name="SeasonKnown">The season is taken off already; where it is not, it makes the length less telling.</param>
public readonly record struct Length(int Days, double Deviation, bool SeasonKnown);

/// <summary>How much longer or shorter than her species a dam carries: herd and dam together.</summary>
/// <param name="Mean">In days; positive: longer.</param>
/// <param name="Variance">How uncertain that is, in days squared.</param>
public readonly record struct Lean(double Mean, double Variance);
