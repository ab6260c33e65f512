using CsCheck;

namespace HerdBot.Tests.Support;

/// <summary>Draws examples from one seed: every run of a test tries the same ones, so that it fails always or never.</summary>
internal static class Draws
{
    private const string Seed = "0000KOIPe3Xd";

    /// <summary>Tries so many examples.</summary>
    public static void Each<T>(this Gen<T> gen, Action<T> hold, int times)
    {
        var chance = PCG.Parse(Seed);
        for (var n = 0; n < times; n++)
        {
            hold(gen.Generate(chance, null, out _));
        }
    }

    /// <inheritdoc cref="Each{T}"/>
    public static void Each<T1, T2>(this Gen<(T1, T2)> gen, Action<T1, T2> hold, int times) => gen.Each(one => hold(one.Item1, one.Item2), times);

    /// <inheritdoc cref="Each{T}"/>
    public static void Each<T1, T2, T3>(this Gen<(T1, T2, T3)> gen, Action<T1, T2, T3> hold, int times) => gen.Each(one => hold(one.Item1, one.Item2, one.Item3), times);

    /// <inheritdoc cref="Each{T}"/>
    public static void Each<T1, T2, T3, T4>(this Gen<(T1, T2, T3, T4)> gen, Action<T1, T2, T3, T4> hold, int times) =>
        gen.Each(one => hold(one.Item1, one.Item2, one.Item3, one.Item4), times);
}
