using System.Buffers.Binary;
using FluentAssertions;
using HerdBot.Core.Herd;
using HerdBot.Host.Calendar;
using HerdBot.Tests.Core.Due;
using Xunit;

namespace HerdBot.Tests.Host.Calendar;

public sealed class SeasonPictureTests
{
    /// <summary>Set to a folder, the picture is kept there, to be looked at.</summary>
    private static readonly string? Kept = Environment.GetEnvironmentVariable("HERDBOT_PICTURES");

    [Fact]
    public void A_herd_of_thirty_is_drawn_as_wide_as_a_phone_with_a_row_a_dam()
    {
        var picture = SeasonPicture.Draw(SomeHerd.State, SomeHerd.Farm, SomeHerd.Now)!;

        if (Kept is not null)
        {
            File.WriteAllBytes(Path.Combine(Kept, "season.png"), picture);
        }
        // The PNG specification: signature, then the header with width and height.
        picture[..8].Should().Equal(0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A);
        BinaryPrimitives.ReadUInt32BigEndian(picture.AsSpan(16)).Should().Be(1080);
        BinaryPrimitives.ReadUInt32BigEndian(picture.AsSpan(20)).Should().BeGreaterThan(30 * 50u);
    }

    [Fact]
    public void Without_anybody_awaited_there_is_no_picture() => SeasonPicture.Draw(HerdState.Empty, SomeHerd.Farm, SomeHerd.Now).Should().BeNull();
}
