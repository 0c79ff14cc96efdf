using LureSim.Casting;
using LureSim.Cli.Hosting;
using LureSim.Cli.Output;
using LureSim.Decision.Search;
using LureSim.Model;
using LureSim.Report.Figures;
using LureSim.Report.Words;

namespace LureSim.Cli.Commands;

/// <summary>Options of <c>cast</c>.</summary>
internal sealed class CastSettings : TableSettings;

/// <summary>Shows how far each lure of the box is cast.</summary>
internal sealed class CastCommand : AnswerCommand<CastSettings>
{
    /// <inheritdoc/>
    protected override Answer Answer(CastSettings settings, CommandRun run)
    {
        Scenario scenario = settings.ReadScenario();
        ChoiceLimits limits = RigChoice.Limits(scenario, settings);
        CastTable table = run.Compute(_ => CastTable.Of(scenario, limits.Body, limits.Presentation));
        return new(JsonOutput.Of("cast", CastJson.Of(table)), "cast", human => CastView.Write(human, table, settings.Formatter), SpotWords.Brief(scenario, settings.Formatter), Cautions.Line(scenario, limits.Head ?? table.Rows[0].Head))
        {
            Csv = CastView.ToCsv(table),
            Pages = settings.Folder is null ? [] : Pictures(table, settings),
        };
    }

    private static OutputFile[] Pictures(CastTable table, CastSettings settings)
    {
        Figure figure = CastBars.Create(table, new FigureOptions(settings.Formatter.System));
        return [new OutputFile($"{figure.Name}.svg", FigureWriter.Svg(figure)), new OutputFile($"{figure.Name}.png", FigureWriter.Png(figure))];
    }
}
