using Flushback.Mechanism.Handle;
using Flushback.Reports.Tests.Fixtures;

namespace Flushback.Reports.Tests;

/// <summary>What the text says of the handle.</summary>
public sealed class HandleTextTests
{
    private static readonly string _sound = Text(SampleHandles.Sound());

    [Fact]
    public void The_lift_in_the_handle_stands_beside_the_bench_in_both_units() =>
        // 0.127 mm on the bench, 0.016 less in the handle; 1 in is 25.4 mm by definition.
        Assert.Matches(@"half stop +\+4\.4 +\+0\.111 +\+5\.0 +\+0\.127 ", _sound);

    [Fact]
    public void The_pull_is_told_in_newtons_and_pounds_force_with_and_without_friction() =>
        Assert.Matches(
            @"Pull to open +\d+\.\d N \(\d+\.\d lbf\) at the nail nick, 40\.0 mm \(1\.575 in\)[\s\S]+? N \([\d.]+ lbf\)\s+without friction",
            _sound
        );

    [Fact]
    public void The_coefficient_of_friction_is_stated() =>
        Assert.Contains("coefficient 0.15, at the contacts and on the pivot", _sound, StringComparison.Ordinal);

    [Fact]
    public void Every_contact_has_its_force_its_pressure_and_the_part_that_yields_first()
    {
        Assert.Matches(@"closed +kick on underside +[\d.]+ N \([\d.]+ lbf\) +8\d7 +the spring at 1964", _sound);
        Assert.Matches(@"open +open corner on underside +[\d.]+ N \([\d.]+ lbf\) +no radius +the spring", _sound);
        Assert.Contains("the blade at 1964", Text(SampleHandles.TakesASet()), StringComparison.Ordinal);
    }

    [Fact]
    public void A_little_more_is_told_for_a_tenth_of_a_millimetre_and_for_a_thou()
    {
        // 5.8 N and 324 MPa for a millimetre of preload; a thou is 0.0254 mm.
        Assert.Matches(
            @"more preload by 0\.1 mm +\+0\.58 +\+32\.4 +\+0\.006 mm\n +by 1 thou +\+0\.15 +\+8\.2 +\+0\.06 thou",
            _sound
        );
    }

    [Fact]
    public void What_is_in_proportion_to_width_and_modulus_is_said_to_be()
    {
        string words = string.Join(' ', _sound.Split((char[])[' ', '\n'], StringSplitOptions.RemoveEmptyEntries));
        Assert.Contains(
            "in proportion to the spring's width, stresses do not depend on it",
            words,
            StringComparison.Ordinal
        );
        Assert.Contains("in proportion to the modulus", words, StringComparison.Ordinal);
    }

    [Fact]
    public void The_steel_its_hardness_and_what_it_stands_are_told()
    {
        Assert.Contains("lasts a thousand to a million openings", _sound, StringComparison.Ordinal);
        Assert.Contains("1095 at 44.0 HRC", _sound, StringComparison.Ordinal);
        Assert.Contains("the spring takes a set", Text(SampleHandles.TakesASet()), StringComparison.Ordinal);
        Assert.Contains("not known: no strength", Text(SampleHandles.OfUnknownStrength()), StringComparison.Ordinal);
    }

    [Fact]
    public void Cautions_are_told_once()
    {
        foreach (
            string caution in new[] { "certification", "qualified shop", "does not lock", "glasses on", "ask locally" }
        )
        {
            string words = string.Join(' ', _sound.Split((char[])[' ', '\n'], StringSplitOptions.RemoveEmptyEntries));
            Assert.Equal(2, words.Split(caution).Length);
        }
    }

    [Fact]
    public void A_stop_without_a_rest_in_the_handle_says_so() =>
        Assert.Matches(@"half stop .* no rest +\d+ +not by itself", Text(SampleHandles.TakesASet()));

    [Fact]
    public void The_handle_is_seven_bit_too() => Assert.DoesNotContain(_sound, character => character > '~');

    private static string Text(HandleReport handle) => TextReport.Write("Jack", SampleReports.InOrder(), [], handle);
}
