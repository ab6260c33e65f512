using System.Globalization;
using HerdBot.Core.Due;
using HerdBot.Core.Herd;
using HerdBot.Core.Wording;
using NodaTime;
using ScottPlot;

namespace HerdBot.Host.Calendar;

/// <summary>The season as a picture for a phone: a row a dam, her window drawn as density; dark on white, to be read in the sun.</summary>
public static class SeasonPicture
{
    private const int Width = 1080;
    private const int Row = 62;
    private const int Margins = 250;
    private const float Letters = 27;
    private const double Height = 0.82;
    private static readonly Color Ink = Colors.Black;
    private static readonly Color Body = new(125, 170, 210);
    private static readonly Color Core = new(10, 45, 90);

    /// <summary>Draws it as PNG; null where nobody is awaited.</summary>
    /// <param name="state">The herd.</param>
    /// <param name="farm">The farm.</param>
    /// <param name="now">What today is.</param>
    public static byte[]? Draw(HerdState state, Farm farm, Instant now)
    {
        ArgumentNullException.ThrowIfNull(state);
        ArgumentNullException.ThrowIfNull(farm);
        var today = farm.Clock.Day(now);
        var awaited = state.Due(farm).Awaited(today);
        if (awaited.Count == 0)
        {
            return null;
        }
        var speaker = new Speaker(farm, now);
        using var plot = new Plot();
        var first = LocalDate.Min(today.PlusDays(-3), awaited.Min(one => one.Due.Window(0.98).From)).PlusDays(-2);
        var last = awaited.Max(one => one.Due.Window(0.98).To).PlusDays(2);
        double X(LocalDate day) => Period.DaysBetween(first, day);
        for (var n = 0; n < awaited.Count; n++)
        {
            Dam(plot, speaker, awaited[n].Due, awaited.Count - 1 - n, X, X(last));
        }
        Axes(plot, speaker, first, last, [.. awaited.Select(one => one.Dam.Name)]);
        Today(plot, speaker.Phrases.Say("calendar.today", ("date", speaker.Date(today))), X(today), awaited.Count);
        plot.Axes.SetLimits(0, X(last), -0.3, awaited.Count + 0.75);
        return plot.GetImageBytes(Width, Margins + Row * awaited.Count, ImageFormat.Png);
    }

    private static IEnumerable<LocalDate> Days(DueForecast due)
    {
        var window = due.Window(0.98);
        return Enumerable.Range(0, Period.DaysBetween(window.From, window.To) + 1).Select(window.From.PlusDays);
    }

    private static void Today(Plot plot, string words, double at, int rows)
    {
        plot.Add.VerticalLine(at, 4, Ink, LinePattern.Dashed);
        var label = plot.Add.Text(words, at, rows + 0.35);
        label.LabelFontSize = Letters;
        label.LabelBold = true;
        label.LabelFontColor = Colors.White;
        label.LabelBackgroundColor = Ink;
        label.LabelPadding = 5;
        label.LabelAlignment = at < rows ? Alignment.MiddleLeft : Alignment.MiddleCenter;
    }

    private static void Dam(Plot plot, Speaker speaker, DueForecast due, int row, Func<LocalDate, double> x, double end)
    {
        var days = Days(due).ToList();
        var most = days.Max(due.ChanceOn);
        Hill(plot, due, days, row, most, x, Body);
        var half = due.Window(0.5);
        Hill(plot, due, [.. days.Where(day => day >= half.From && day <= half.To)], row, most, x, Core);
        plot.Add.Line(0, row, end, row).LineStyle = new LineStyle { Color = Colors.Gray, Width = 1 };
        // The date stands where there is room: left of the window, or right of it.
        var likely = due.Window(0.95);
        var left = x(likely.To) > 0.8 * end;
        var late = due.Case.Today >= due.OverdueFrom;
        var words = late ? speaker.Phrases.Say("calendar.late", ("days", due.Days.ToString(CultureInfo.InvariantCulture))) : speaker.Date(due.Median);
        var label = plot.Add.Text(words, left ? x(likely.From) - 1.5 : x(likely.To) + 1.5, row + 0.4);
        label.LabelFontSize = Letters;
        label.LabelFontColor = Ink;
        label.LabelBold = true;
        label.LabelAlignment = left ? Alignment.MiddleRight : Alignment.MiddleLeft;
    }

    private static void Hill(Plot plot, DueForecast due, IReadOnlyList<LocalDate> days, int row, double most, Func<LocalDate, double> x, Color colour)
    {
        var top = days.SelectMany(day => new[] { (At: x(day) - 0.5, Day: day), (At: x(day) + 0.5, Day: day) }).Select(edge => new Coordinates(edge.At, row + Height * due.ChanceOn(edge.Day) / most));
        var hill = plot.Add.Polygon([new Coordinates(x(days[0]) - 0.5, row), .. top, new Coordinates(x(days[^1]) + 0.5, row)]);
        hill.FillColor = colour;
        hill.LineWidth = 0;
    }

    private static void Axes(Plot plot, Speaker speaker, LocalDate first, LocalDate last, IReadOnlyList<string> names)
    {
        var marks = Enumerable.Range(0, Period.DaysBetween(first, last) + 1).Select(first.PlusDays).Where(day => day.Day is 1 or 15).ToList();
        var every = marks.Count > 8 ? marks.Where(day => day.Day == 1).ToList() : marks;
        double[] at = [.. every.Select(day => (double)Period.DaysBetween(first, day))];
        string[] said = [.. every.Select(speaker.Date)];
        plot.Axes.Bottom.TickGenerator = new ScottPlot.TickGenerators.NumericManual(at, said);
        plot.Axes.Left.TickGenerator = new ScottPlot.TickGenerators.NumericManual([.. names.Select((_, n) => names.Count - 1 - n + 0.38)], [.. names]);
        plot.Axes.Top.TickGenerator = new ScottPlot.TickGenerators.NumericManual(at, said);
        foreach (var axis in new IAxis[] { plot.Axes.Bottom, plot.Axes.Top, plot.Axes.Left })
        {
            axis.TickLabelStyle.FontSize = Letters;
            axis.TickLabelStyle.ForeColor = Ink;
            axis.TickLabelStyle.Bold = true;
        }
        plot.Axes.Left.MajorTickStyle.Length = 0;
        plot.Axes.Right.FrameLineStyle.Width = 0;
        plot.Axes.Top.FrameLineStyle.Width = 0;
        plot.Grid.YAxisStyle.IsVisible = false;
        plot.Grid.XAxisStyle.MajorLineStyle.Color = new Color(150, 150, 150);
        plot.Grid.XAxisStyle.MajorLineStyle.Width = 2;
        plot.Axes.Title.Label.Text = speaker.Phrases.Say("calendar.title");
        plot.Axes.Title.Label.FontSize = Letters + 3;
        plot.FigureBackground.Color = Colors.White;
    }
}
