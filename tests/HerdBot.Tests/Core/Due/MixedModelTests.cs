using System.Globalization;
using System.Text.Json;
using FluentAssertions;
using HerdBot.Core.Due;
using Xunit;

namespace HerdBot.Tests.Core.Due;

/// <summary>Against lme4 of R on simulated herds: Samples/due/lme4.R made the lengths and the reference; .ci/reference makes them anew.</summary>
public sealed class MixedModelTests
{
    private static readonly string Folder = Path.Combine(AppContext.BaseDirectory, "Samples", "due");
    private static readonly JsonElement Reference = JsonDocument.Parse(File.ReadAllText(Path.Combine(Folder, "lme4.json"))).RootElement;

    [Fact]
    public void Restricted_likelihood_finds_the_variances_that_lme4_finds()
    {
        var theirs = Reference.GetProperty("one_herd");

        var ours = Reml.Fit(Lengths("one-herd.csv").Values.Select(dam => dam.Lengths));

        ours.Mean.Should().BeApproximately(Number(theirs, "mean"), 0.05);
        ours.Dam.Should().BeApproximately(Number(theirs, "dam_variance"), 0.05 * Number(theirs, "dam_variance"));
        ours.Residual.Should().BeApproximately(Number(theirs, "residual_variance"), 0.05 * Number(theirs, "residual_variance"));
    }

    [Fact]
    public void Dams_of_one_herd_are_predicted_as_lme4_predicts_them()
    {
        var theirs = Reference.GetProperty("one_herd");
        var dams = Lengths("one-herd.csv");
        var fit = Reml.Fit(dams.Values.Select(dam => dam.Lengths));
        // A herd that may be anything: then its mean is estimated from its dams alone, as a fixed effect is.
        var model = MixedModel.Of(new Variances(1e9, fit.Dam, fit.Residual), 18, dams.Values.Select(dam => Deviations(dam.Lengths, 346)));

        foreach (var (name, (_, lengths)) in dams)
        {
            (346 + model.OfDam(Deviations(lengths, 346)).Mean).Should().BeApproximately(Number(theirs.GetProperty("dams"), name), 0.2, name);
        }
    }

    [Fact]
    public void Herd_and_dam_together_are_predicted_as_lme4_predicts_them()
    {
        var theirs = Reference.GetProperty("herds");
        var mean = Number(theirs, "mean");
        var variances = new Variances(Number(theirs, "herd_variance"), Number(theirs, "dam_variance"), Number(theirs, "residual_variance"));

        foreach (var herd in Lengths("herds.csv").GroupBy(dam => dam.Value.Herd))
        {
            var model = MixedModel.Of(variances, 18, herd.Select(dam => Deviations(dam.Value.Lengths, mean)));
            foreach (var (name, (_, lengths)) in herd)
            {
                (mean + model.OfDam(Deviations(lengths, mean)).Mean).Should().BeApproximately(Number(theirs.GetProperty("dams"), name), 0.02, name);
            }
        }
    }

    [Fact]
    public void A_dam_without_a_record_is_taken_as_her_herd()
    {
        var variances = new Variances(8, 23, 105);
        var model = MixedModel.Of(variances, 18, [Deviations([352, 351], 346)]);

        // By hand: a mean of +5.5 of variance 23 + 105/2, against a herd of variance 8 around 0.
        var weight = 1 / (23 + 52.5);
        model.OfDam([]).Mean.Should().BeApproximately(5.5 * weight / (weight + 1 / 8.0), 1e-9);
        model.OfDam([]).Variance.Should().BeApproximately(23 + 1 / (weight + 1 / 8.0), 1e-9);
    }

    [Fact]
    public void A_length_without_its_season_says_less()
    {
        var variances = new Variances(8, 23, 105);
        double With(bool season) => MixedModel.Of(variances, 18, [[new Length(356, 10, season)]]).OfDam([new Length(356, 10, season)]).Mean;

        With(false).Should().BeLessThan(With(true));
    }

    [Fact]
    public void Dams_that_differ_by_nothing_have_no_variance() =>
        Reml.Fit([[340, 350], [341, 349], [342, 348], [345, 345]]).Dam.Should().BeApproximately(0, 1e-6);

    private static Dictionary<string, (int Herd, List<double> Lengths)> Lengths(string file) =>
        File.ReadLines(Path.Combine(Folder, file)).Skip(1).Select(line => line.Split(','))
            .GroupBy(parts => parts[1]).ToDictionary(dam => dam.Key, dam => (int.Parse(dam.First()[0], CultureInfo.InvariantCulture), dam.Select(parts => double.Parse(parts[2], CultureInfo.InvariantCulture)).ToList()));

    private static List<Length> Deviations(List<double> lengths, double mean) => lengths.ConvertAll(length => new Length((int)length, length - mean, true));

    private static double Number(JsonElement json, string key) => json.GetProperty(key).GetDouble();
}
