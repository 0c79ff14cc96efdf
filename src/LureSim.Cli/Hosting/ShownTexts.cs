using Spectre.Console;
using Spectre.Console.Rendering;

namespace LureSim.Cli.Hosting;

/// <summary>
/// Stands between whatever is printed and the console: no text, from a scenario, a file's name or a message, steers the
/// terminal or hides in it. The console's own control sequences for colour and progress pass.
/// </summary>
internal sealed class ShownTexts : IRenderHook
{
    /// <inheritdoc/>
    public IEnumerable<IRenderable> Process(RenderOptions options, IEnumerable<IRenderable> renderables) => renderables.Select(renderable => new Shown(renderable));

    private sealed class Shown(IRenderable inner) : IRenderable
    {
        public Measurement Measure(RenderOptions options, int maxWidth) => inner.Measure(options, maxWidth);

        public IEnumerable<Segment> Render(RenderOptions options, int maxWidth) => inner.Render(options, maxWidth).Select(Of);

        private static Segment Of(Segment segment)
        {
            if (segment.IsControlCode || segment.IsLineBreak)
                return segment;
            string shown = VisibleText.Shown(segment.Text);
            return ReferenceEquals(shown, segment.Text) ? segment : new Segment(shown, segment.Style);
        }
    }
}
