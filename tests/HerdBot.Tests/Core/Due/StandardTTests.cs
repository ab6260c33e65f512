using FluentAssertions;
using HerdBot.Core.Due;
using MathNet.Numerics.Distributions;
using Xunit;

namespace HerdBot.Tests.Core.Due;

public sealed class StandardTTests
{
    /// <summary>The witness is MathNet.Numerics, asked for the very values between the table's steps.</summary>
    [Theory]
    [InlineData(5.4)]
    [InlineData(7)]
    [InlineData(30)]
    [InlineData(200)]
    public void The_table_agrees_with_the_library(double degrees)
    {
        var table = StandardT.Of(degrees);

        for (var x = -23.9; x < 23.9; x += 0.0371)
        {
            table.Below(x).Should().BeApproximately(StudentT.CDF(0, 1, degrees, x), 1e-5);
        }
    }

    [Fact]
    public void Far_out_it_stays_a_chance()
    {
        StandardT.Of(7).Below(1e9).Should().BeInRange(0.99999, 1);
        StandardT.Of(7).Below(-1e9).Should().BeInRange(0, 0.00001);
    }
}
