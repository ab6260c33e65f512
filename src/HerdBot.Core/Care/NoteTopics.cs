using HerdBot.Core.Facts;

namespace HerdBot.Core.Care;

/// <summary>What a loosely worded fact is about, where the plan listens to it: the words in its <see cref="Fact.Field"/>, parted by spaces.</summary>
public static class NoteTopics
{
    /// <summary>Limp, no suck, cold mouth, fits, down again, dull.</summary>
    public const string Weak = "weak";
    /// <summary>The head is not up.</summary>
    public const string HeadDown = "head_down";
    /// <summary>Somebody says that it came before its time.</summary>
    public const string Early = "early";
    /// <summary>A sign of prematurity: floppy ears.</summary>
    public const string EarlyEars = "early_ears";
    /// <summary>A sign of prematurity: no incisors.</summary>
    public const string EarlyTeeth = "early_teeth";
    /// <summary>A sign of prematurity: down on its pasterns.</summary>
    public const string EarlyPasterns = "early_pasterns";
    /// <summary>A sign of prematurity: a weak suck.</summary>
    public const string EarlySuck = "early_suck";
    /// <summary>A sign of prematurity: the caps still on its toes.</summary>
    public const string EarlyCaps = "early_caps";
    /// <summary>It breathes through its mouth, hard or fast, or its nostrils flare.</summary>
    public const string Breathing = "breathing";
    /// <summary>Born without a passage, or with a cleft palate.</summary>
    public const string GraveDefect = "grave_defect";
    /// <summary>Another thing that it was born with: a hernia, a crooked leg.</summary>
    public const string Defect = "defect";
    /// <summary>The newborn strains, or its belly is tight.</summary>
    public const string Strains = "strains";
    /// <summary>It scours.</summary>
    public const string Scours = "scours";
    /// <summary>A joint is swollen.</summary>
    public const string Joint = "joint";
    /// <summary>The navel is hot, swollen or smells.</summary>
    public const string Navel = "navel";
    /// <summary>It has stopped drinking.</summary>
    public const string OffMilk = "off_milk";
    /// <summary>Somebody looked it over.</summary>
    public const string LookedOver = "looked_over";
    /// <summary>Its antibodies are not tested.</summary>
    public const string NotTesting = "not_testing";
    /// <summary>It was weaned.</summary>
    public const string Weaned = "weaned";
    /// <summary>It wears a coat from here on.</summary>
    public const string CoatOn = "coat_on";
    /// <summary>The coat is off.</summary>
    public const string CoatOff = "coat_off";
    /// <summary>It is raised by hand.</summary>
    public const string ByHand = "by_hand";
    /// <summary>It was put to another dam.</summary>
    public const string Grafted = "grafted";
    /// <summary>The dam has no milk.</summary>
    public const string NoMilk = "no_milk";
    /// <summary>Milk comes, from all four teats.</summary>
    public const string MilkComes = "milk_comes";
    /// <summary>The dam rejects it.</summary>
    public const string Rejects = "rejects";
    /// <summary>She takes to it.</summary>
    public const string Accepts = "accepts";
    /// <summary>The dam is down or pale.</summary>
    public const string DamIll = "dam_ill";
    /// <summary>The dam bleeds.</summary>
    public const string Bleeds = "bleeds";
    /// <summary>Her womb is coming out.</summary>
    public const string Prolapse = "prolapse";
    /// <summary>The dam has colic.</summary>
    public const string Colic = "colic";
    /// <summary>Rolling or kicking: labour at her time, a twisted womb before it.</summary>
    public const string Rolls = "rolls";
    /// <summary>Foul discharge, fever: her womb is infected.</summary>
    public const string Infection = "infection";
    /// <summary>She does not eat.</summary>
    public const string OffFeed = "off_feed";
    /// <summary>The placenta is torn, or a piece is missing.</summary>
    public const string Torn = "torn";
    /// <summary>The placenta is whole.</summary>
    public const string Whole = "whole";
    /// <summary>Bright, eating, doing well.</summary>
    public const string Well = "well";
    /// <summary>The vet has it: here, or at the clinic.</summary>
    public const string Away = "away";
    /// <summary>It is back, or the vet has gone.</summary>
    public const string Back = "back";
    /// <summary>The vet said what is to be done.</summary>
    public const string Order = "order";
    /// <summary>A score of body condition.</summary>
    public const string Condition = "condition";
    /// <summary>Blood in a stream, or pale gums.</summary>
    public const string Stream = "stream";
    /// <summary>A sign that labour is on: up and down, rolling, straining, tail up.</summary>
    public const string Labour = "labour";
    /// <summary>A sign that only puts her on the list.</summary>
    public const string CloseUp = "close_up";
    /// <summary>Udder, wax, ligaments: weeks before the birth or not at all; puts her on the list and says nothing of today.</summary>
    public const string Bagging = "bagging";
    /// <summary>Straining, or a bag or bubble in view: the clocks of the birth itself run.</summary>
    public const string InView = "in_view";
    /// <summary>Nose and two forefeet.</summary>
    public const string Normal = "normal";
    /// <summary>Anything else in view.</summary>
    public const string Abnormal = "abnormal";

    /// <summary>Whether a fact is about one of some topics.</summary>
    public static bool Says(this Fact fact, params ReadOnlySpan<string> topics)
    {
        ArgumentNullException.ThrowIfNull(fact);
        if (fact.Field is not { Length: > 0 } field)
        {
            return false;
        }
        foreach (var topic in topics)
        {
            if (field == topic || (field.Contains(' ', StringComparison.Ordinal) && field.Split(' ').Contains(topic)))
            {
                return true;
            }
        }
        return false;
    }
}
