namespace HerdBot.Tests.Support.StoreDisk;

/// <summary>A coin that falls the same way each time: equal seeds give equal runs (a linear congruence, upper bits).</summary>
internal sealed class Chance(ulong seed)
{
    private ulong _state = seed;

    /// <summary>A number from 0 to one below <paramref name="count"/>.</summary>
    public int Below(int count)
    {
        // Source of the two numbers: Knuth's MMIX, as given in The Art of Computer Programming, vol. 2, 3.3.4 (from memory).
        _state = unchecked((_state * 6364136223846793005) + 1442695040888963407);
        return (int)((_state >> 33) % (ulong)count);
    }

    public bool OneIn(int count) => Below(count) == 0;
}
