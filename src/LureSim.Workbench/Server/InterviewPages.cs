using System.Diagnostics;
using System.Globalization;
using System.Text;
using System.Text.Encodings.Web;
using LureSim.Report.Words;
using LureSim.Scenarios.Interview;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace LureSim.Workbench.Server;

/// <summary>
/// The interview of <c>luresim new</c> in the browser: one question a page, plain forms, no script; the questions are those of the terminal. Every page sends the key
/// that it was served with. Thread-safe.
/// </summary>
/// <param name="keys">Keys of this program.</param>
/// <param name="shelf">Where the scenario is written.</param>
/// <param name="today">The day, for what is assumed of the season.</param>
internal sealed class InterviewPages(Keys keys, Shelf shelf, DateOnly today)
{
    private const string Unsure = "not sure";
    private const string Other = "-other";
    private const string Key = "key";

    // More words than these are told in the hint and typed.
    private const int MostButtons = 30;

    private readonly Lock gate = new();
    private AnswerSheet sheet = new(today);

    /// <summary>Adds the pages.</summary>
    /// <param name="app">The program.</param>
    public void Map(WebApplication app)
    {
        app.MapGet("/new", Begin);
        app.MapGet("/new/{number:int}", context => Show(context, Number(context), null));
        app.MapPost("/new/{number:int}", Take);
        app.MapGet("/new/check", context => Write(context, Check(RouteOf(context), "")));
        app.MapPost("/new/write", Finish);
    }

    private Task Begin(HttpContext context)
    {
        lock (gate) sheet = new AnswerSheet(today);
        context.Response.Redirect("/new/1");
        return Task.CompletedTask;
    }

    private Task Show(HttpContext context, int number, (Dictionary<string, string> Typed, Dictionary<string, string> Problems)? again)
    {
        Question? question = Questions.All.FirstOrDefault(item => item.Number == number);
        if (question is null)
        {
            context.Response.StatusCode = StatusCodes.Status404NotFound;
            return context.Response.WriteAsync("There is no such question.", context.RequestAborted);
        }

        string html;
        lock (gate) html = Form(question, RouteOf(context), again);
        return Write(context, html);
    }

    private async Task Take(HttpContext context)
    {
        Question? question = Questions.All.FirstOrDefault(item => item.Number == Number(context));
        IFormCollection form = await context.Request.ReadFormAsync(context.RequestAborted).ConfigureAwait(false);
        if (question is null || !keys.Knows(form[Key]))
        {
            await Refuse(context).ConfigureAwait(false);
            return;
        }

        string route = RouteOf(context);
        Dictionary<string, string> typed = [], problems = [];
        string next;
        lock (gate)
        {
            sheet.Forget(question);
            foreach (Part part in question.Parts)
            {
                if (!part.IsAsked(sheet) || sheet.Has(part.Id)) continue;
                string other = form[part.Id + Other].ToString().Trim();
                string answer = other.Length > 0 ? other : string.Join(", ", form[part.Id].ToArray());
                typed[part.Id] = answer;
                if (sheet.Answer(part, answer) is { } problem) problems[part.Id] = problem;
            }

            next = context.Request.Query.ContainsKey("change") ? $"/new/check?r={route}" : After(question, route);
        }

        if (problems.Count > 0)
        {
            context.Response.StatusCode = StatusCodes.Status422UnprocessableEntity;
            await Show(context, question.Number, (typed, problems)).ConfigureAwait(false);
            return;
        }

        context.Response.StatusCode = StatusCodes.Status303SeeOther;
        context.Response.Headers.Location = next;
    }

    private async Task Finish(HttpContext context)
    {
        IFormCollection form = await context.Request.ReadFormAsync(context.RequestAborted).ConfigureAwait(false);
        if (!keys.Knows(form[Key]))
        {
            await Refuse(context).ConfigureAwait(false);
            return;
        }

        InterviewResult result;
        lock (gate) result = InterviewResult.Of(sheet);
        if (!result.Reading.IsValid || shelf.Add(result.FileName, result.Text, out string problem) is not { } file)
        {
            problem = result.Reading.IsValid ? "The file could not be written." : string.Join(" ", result.Reading.Problems.Select(item => Grammar.Sentence(item.Message)));
            context.Response.StatusCode = StatusCodes.Status422UnprocessableEntity;
            await Write(context, Check(RouteOf(context), problem)).ConfigureAwait(false);
            return;
        }

        context.Response.StatusCode = StatusCodes.Status303SeeOther;
        context.Response.Headers.Location = string.Create(CultureInfo.InvariantCulture, $"/spot/{file.Id}");
    }

    private static IReadOnlyList<Question> Route(string route) => [.. Questions.All.Where(question => route == "all" || question.IsShort)];

    // The next question of the route that asks anything; then the page that checks.
    private string After(Question question, string route)
    {
        Question? next = Route(route).FirstOrDefault(other => other.Number > question.Number && other.Parts.Any(part => part.IsAsked(sheet)));
        return next is null ? $"/new/check?r={route}" : string.Create(CultureInfo.InvariantCulture, $"/new/{next.Number}?r={route}");
    }

    private string Form(Question question, string route, (Dictionary<string, string> Typed, Dictionary<string, string> Problems)? again)
    {
        HtmlEncoder e = HtmlEncoder.Default;
        IReadOnlyList<Question> way = Route(route);
        int at = way.ToList().FindIndex(item => item.Number >= question.Number);
        var html = new StringBuilder();
        Question? before = way.LastOrDefault(other => other.Number < question.Number);
        if (before is not null) html.Append(CultureInfo.InvariantCulture, $"<p><a class=\"back\" href=\"/new/{before.Number}?r={route}\">Back</a></p>");
        if (at >= 0 && way[at].Number == question.Number) html.Append(CultureInfo.InvariantCulture, $"<p class=\"small\">{at + 1} of {way.Count}</p>");
        if (again is { } wrong)
        {
            html.Append("<div class=\"errors\" role=\"alert\" tabindex=\"-1\"><h2>Something to fix</h2><ul>");
            foreach ((string id, string problem) in wrong.Problems) html.Append(CultureInfo.InvariantCulture, $"<li><a href=\"#{id}\">{e.Encode(Grammar.Sentence(problem))}</a></li>");
            html.Append("</ul></div>");
        }

        html.Append(CultureInfo.InvariantCulture, $"<form method=\"post\" novalidate><input type=\"hidden\" name=\"{Key}\" value=\"{keys.NewPage()}\"><h1>{e.Encode(question.Text)}</h1><p class=\"small\">{e.Encode(question.Why)}</p>");
        foreach (Part part in question.Parts.Where(part => part.IsAsked(sheet) || part.Applies is null || sheet.Has(part.Id)))
        {
            string fallback = part.DefaultFor(sheet), given = again is { } typed && typed.Typed.TryGetValue(part.Id, out string? own) ? own : sheet.Has(part.Id) ? sheet[part.Id].Source == GivenSource.NotSure ? Unsure : sheet[part.Id].Shown : "";
            string? problem = again?.Problems.GetValueOrDefault(part.Id);
            string label = part.Text.Length > 0 ? part.Text : question.Text;
            (IReadOnlyList<Choice> choices, bool several) = part.Form switch
            {
                ChoiceForm choice => (choice.Choices, choice.Most > 1),
                MeasureForm measure => (measure.Choices, measure.Most > 1),
                CountForm count => (count.Choices, false),
                TextForm or BaitForm => ([], false),
                _ => throw new UnreachableException(),
            };
            html.Append(CultureInfo.InvariantCulture, $"<fieldset id=\"{part.Id}\"{(problem is null ? "" : " class=\"wrong\"")}><legend{(part.Text.Length > 0 ? "" : " class=\"hidden\"")}>{e.Encode(label)}</legend>");
            if (problem is not null) html.Append(CultureInfo.InvariantCulture, $"<p class=\"problem\" id=\"{part.Id}-problem\">{e.Encode(Grammar.Sentence(problem))}</p>");
            if (part.Hint.Length > 0) html.Append(CultureInfo.InvariantCulture, $"<p class=\"small\">{e.Encode(part.Hint)}</p>");
            string[] said = [.. given.Split(", ", StringSplitOptions.RemoveEmptyEntries)];
            if (choices.Count <= MostButtons)
            {
                string[] usual = given.Length > 0 ? said : fallback.Split(", ");
                foreach (Choice choice in choices)
                    Button(choice.Word, choice.Meaning.Length > 0 ? $"{choice.Word} ({choice.Meaning})" : choice.Word, usual.Contains(choice.Word, StringComparer.Ordinal), several);
            }

            Button(Unsure, "not sure", given == Unsure, false);
            if (part.Form is not ChoiceForm)
            {
                string other = said.All(word => choices.Any(choice => choice.Word == word) || word == Unsure) ? "" : given;
                string describe = problem is null ? "" : $" aria-describedby=\"{part.Id}-problem\" aria-invalid=\"true\"";
                html.Append(CultureInfo.InvariantCulture, $"<label class=\"other\" for=\"{part.Id}{Other}\">{(choices.Count > 0 ? "or in your words" : e.Encode(part.Form.Allowed))}</label><input type=\"text\" id=\"{part.Id}{Other}\" name=\"{part.Id}{Other}\" value=\"{e.Encode(other)}\" placeholder=\"{e.Encode(fallback)}\" maxlength=\"200\" autocomplete=\"off\"{describe}>");
            }

            html.Append("</fieldset>");

            void Button(string value, string words, bool on, bool many) => html.Append(CultureInfo.InvariantCulture,
                $"<label class=\"pick\"><input type=\"{(many ? "checkbox" : "radio")}\" name=\"{part.Id}\" value=\"{e.Encode(value)}\"{(on ? " checked" : "")}> {e.Encode(words)}</label>");
        }

        html.Append("<button type=\"submit\">Continue</button></form>");
        return html.ToString();
    }

    private string Check(string route, string problem)
    {
        HtmlEncoder e = HtmlEncoder.Default;
        InterviewResult result;
        lock (gate) result = InterviewResult.Of(sheet);
        var html = new StringBuilder("<h1>Check your answers</h1>");
        IEnumerable<string> wrong = problem.Length > 0 ? [problem] : result.Reading.Problems.Select(item => Grammar.Sentence(item.Message));
        foreach (string words in wrong) html.Append(CultureInfo.InvariantCulture, $"<p class=\"problem\" role=\"alert\">{e.Encode(words)}</p>");
        Table("You said", result.Answered, false);
        Table("We assumed", result.Assumed, true);
        html.Append("<p class=\"small\">And what was not asked: no wind, a loop knot, lures rigged straight.</p>");
        html.Append(CultureInfo.InvariantCulture, $"<form method=\"post\" action=\"/new/write\"><input type=\"hidden\" name=\"{Key}\" value=\"{keys.NewPage()}\"><button type=\"submit\">Write {e.Encode(result.FileName)} and show it</button></form>");
        if (route != "all") html.Append(CultureInfo.InvariantCulture, $"<p><a class=\"back\" href=\"/new/{Questions.All.First(question => !question.IsShort).Number}?r=all\">Go on for a better answer: nine more questions</a></p>");
        return html.ToString();

        void Table(string title, IReadOnlyList<(Part Part, Given Given)> rows, bool assumed)
        {
            if (rows.Count == 0) return;
            html.Append(CultureInfo.InvariantCulture, $"<h2>{title}</h2><div class=\"scroll\" role=\"region\" tabindex=\"0\" aria-label=\"{title}\"><table><tbody>");
            foreach ((Part part, Given given) in rows)
            {
                Question question = Questions.Of(part);
                string label = part.Text.Length > 0 ? part.Text : question.Text;
                html.Append(CultureInfo.InvariantCulture, $"<tr><th scope=\"row\">{e.Encode(label)}</th><td>{e.Encode(given.Shown)}{(given.Source == GivenSource.NotSure ? ", give or take" : "")}</td><td><a href=\"/new/{question.Number}?r={route}&amp;change=1\">{(assumed ? "say" : "change")}<span class=\"hidden\"> {e.Encode(label)}</span></a></td></tr>");
            }

            html.Append("</tbody></table></div>");
        }
    }

    private static string RouteOf(HttpContext context) => context.Request.Query["r"] == "all" ? "all" : "short";

    private static int Number(HttpContext context) => int.Parse((string)context.Request.RouteValues["number"]!, CultureInfo.InvariantCulture);

    private static Task Refuse(HttpContext context)
    {
        context.Response.StatusCode = StatusCodes.Status403Forbidden;
        return context.Response.WriteAsync("This form was not served by this program, or long ago. Go back, reload, and send it again.", context.RequestAborted);
    }

    private static async Task Write(HttpContext context, string body)
    {
        byte[] bytes = Encoding.UTF8.GetBytes(Assets.Text("interview.html").Replace("{{body}}", body, StringComparison.Ordinal));
        context.Response.ContentType = "text/html; charset=utf-8";
        context.Response.ContentLength = bytes.Length;
        await context.Response.Body.WriteAsync(bytes, context.RequestAborted).ConfigureAwait(false);
    }
}
