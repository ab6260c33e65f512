namespace HerdBot.Core.Due;

/// <summary>What a pregnancy's length varies by, in days squared.</summary>
/// <param name="Herd">Between herds.</param>
/// <param name="Dam">Between the dams of a herd.</param>
/// <param name="Residual">Between the pregnancies of a dam, the season aside.</param>
public sealed record Variances(double Herd, double Dam, double Residual);
