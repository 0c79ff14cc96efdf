using System.Globalization;
using System.Reflection;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace LureSim.Mutation;

/// <summary>The model with all mutants of a run in one assembly: each wrong formula stands beside the right one, and an environment variable says which mutant is at work.</summary>
internal sealed class Schemata
{
    /// <summary>Environment variable that holds the number of the mutant at work; 0 or nothing for none.</summary>
    public const string Variable = "LURESIM_MUTANT";

    /// <summary>Type that reads it, once: the compiler of the running program sees a constant.</summary>
    public const string SwitchType = "ActiveMutant";

    private const string Marker = "mutant";

    private readonly string model;
    private readonly CSharpParseOptions parsing = new(LanguageVersion.Latest, DocumentationMode.None);
    private readonly Dictionary<string, SyntaxTree> trees = new(StringComparer.Ordinal);

    /// <summary>Reads the sources of the model.</summary>
    /// <param name="root">Root of the repository, where the model has been built.</param>
    /// <param name="configuration">Debug or Release.</param>
    public Schemata(string root, string configuration)
    {
        string source = Path.Combine(root, "src", "LureSim");
        model = Path.Combine(source, "bin", configuration, "net10.0", "LureSim.dll");
        string generated = Path.Combine(source, "obj", configuration, "net10.0");
        foreach (string path in Directory.EnumerateFiles(source, "*.cs", SearchOption.AllDirectories).Order(StringComparer.Ordinal))
        {
            string file = Path.GetRelativePath(source, path).Replace('\\', '/');
            if (!file.StartsWith("obj/", StringComparison.Ordinal) && !file.StartsWith("bin/", StringComparison.Ordinal)) Add(file, path);
        }

        foreach (string path in Directory.EnumerateFiles(generated, "*.cs")) Add("obj/" + Path.GetFileName(path), path);

        void Add(string file, string path) => trees[file] = CSharpSyntaxTree.ParseText(File.ReadAllText(path), parsing, file);
    }

    /// <summary>Places in formulas of some folders of the model.</summary>
    public IReadOnlyList<MutantSite> Sites(IReadOnlyCollection<string> folders)
    {
        CSharpCompilation compilation = Compilation(trees.Values);
        return
        [
            .. KnownMutants.All.Select(Site).OfType<MutantSite>(),
            .. trees.Where(t => folders.Any(f => t.Key.StartsWith(f + "/", StringComparison.Ordinal)))
                .SelectMany(t => SiteFinder.In(t.Value, compilation.GetSemanticModel(t.Value), t.Key)),
        ];
    }

    // Null where the formula is no longer written so.
    private MutantSite? Site((string File, string Before, string After) known) =>
        trees[known.File].GetRoot().DescendantNodes().OfType<ExpressionSyntax>().FirstOrDefault(n => n.ToString() == known.Before) is { } node ? new(known.File, node, MutantKind.Known, known.After) : null;

    /// <summary>Writes the model with its mutants; those that the compiler refuses are left out.</summary>
    /// <param name="sites">The mutants by their numbers.</param>
    /// <param name="path">Where the assembly goes.</param>
    /// <returns>Numbers of the mutants that are in it.</returns>
    /// <exception cref="InvalidOperationException">The model does not compile whatever is left out.</exception>
    public IReadOnlySet<int> Write(IReadOnlyDictionary<int, MutantSite> sites, string path)
    {
        var left = new Dictionary<int, MutantSite>(sites);
        while (true)
        {
            CSharpCompilation compilation = Compilation([.. trees.Select(t => Switched(t.Key, t.Value, left)), Switch()]);
            using var image = new MemoryStream();
            var result = compilation.Emit(image, manifestResources: Resources());
            if (result.Success)
            {
                File.WriteAllBytes(path, image.ToArray());
                return left.Keys.ToHashSet();
            }

            Diagnostic[] errors = [.. result.Diagnostics.Where(d => d.Severity == DiagnosticSeverity.Error)];
            int[] refused = [.. errors.SelectMany(MutantsNear).Distinct()];
            if (refused.Length == 0) throw new InvalidOperationException(string.Join("\n", errors.Take(5)));
            foreach (int number in refused) left.Remove(number);
        }
    }

    // Mutants of the expression that the compiler names, or else of the member around it.
    private static IEnumerable<int> MutantsNear(Diagnostic error)
    {
        SyntaxNode node = error.Location.SourceTree!.GetRoot().FindNode(error.Location.SourceSpan);
        for (SyntaxNode? around = node; around is not null; around = around.Parent)
        {
            int[] marked = [.. around.GetAnnotatedNodes(Marker).SelectMany(n => n.GetAnnotations(Marker)).Select(a => int.Parse(a.Data!, CultureInfo.InvariantCulture))];
            if (marked.Length > 0) return marked;
        }

        return [];
    }

    private SyntaxTree Switched(string file, SyntaxTree tree, Dictionary<int, MutantSite> sites)
    {
        Dictionary<SyntaxNode, int> here = sites.Where(s => s.Value.File == file).ToDictionary(s => (SyntaxNode)s.Value.Node, s => s.Key);
        if (here.Count == 0) return tree;
        HashSet<SyntaxNode> constants = [.. here.Keys.Select(SiteFinder.Constant).OfType<SyntaxNode>()];
        SyntaxNode root = tree.GetRoot().ReplaceNodes(here.Keys.Concat(constants), (original, rewritten) => here.TryGetValue(original, out int number)
            ? sites[number].Switched(number, (ExpressionSyntax)rewritten).WithAdditionalAnnotations(new SyntaxAnnotation(Marker, number.ToString(CultureInfo.InvariantCulture)))
            : Unfixed(rewritten));
        return CSharpSyntaxTree.Create((CompilationUnitSyntax)root, parsing, file);
    }

    // A constant becomes a property, which has its value whatever the order of the fields; within a method, a variable.
    private static SyntaxNode Unfixed(SyntaxNode constant)
    {
        if (constant is LocalDeclarationStatementSyntax local) return local.WithModifiers(default);
        var field = (FieldDeclarationSyntax)constant;
        VariableDeclaratorSyntax variable = field.Declaration.Variables[0];
        SyntaxTokenList modifiers = SyntaxFactory.TokenList(field.Modifiers.Select(m => m.IsKind(SyntaxKind.ConstKeyword) ? SyntaxFactory.Token(SyntaxKind.StaticKeyword).WithTriviaFrom(m) : m));
        return SyntaxFactory.PropertyDeclaration(field.Declaration.Type, variable.Identifier)
            .WithModifiers(modifiers)
            .WithExpressionBody(SyntaxFactory.ArrowExpressionClause(variable.Initializer!.Value))
            .WithSemicolonToken(field.SemicolonToken);
    }

    private CSharpCompilation Compilation(IEnumerable<SyntaxTree> sources)
    {
        string platform = Path.GetDirectoryName(typeof(object).Assembly.Location)!;
        IEnumerable<string> references = Directory.EnumerateFiles(platform, "*.dll").Where(IsManaged).Append(Path.Combine(AppContext.BaseDirectory, "MathNet.Numerics.dll"));
        var options = new CSharpCompilationOptions(OutputKind.DynamicallyLinkedLibrary, optimizationLevel: OptimizationLevel.Release, nullableContextOptions: NullableContextOptions.Enable);
        return CSharpCompilation.Create("LureSim", sources, references.Select(r => MetadataReference.CreateFromFile(r)), options);
    }

    private static bool IsManaged(string path)
    {
        string name = Path.GetFileName(path);
        return name.StartsWith("System.", StringComparison.Ordinal) && !name.Contains(".Native", StringComparison.Ordinal) || name is "mscorlib.dll" or "netstandard.dll";
    }

    private SyntaxTree Switch() => CSharpSyntaxTree.ParseText(
        $$"""
        namespace LureSim;
        internal static class {{SwitchType}}
        {
            public static readonly int Number = int.TryParse(System.Environment.GetEnvironmentVariable("{{Variable}}"), out int number) ? number : 0;
        }
        """,
        parsing,
        SwitchType + ".cs");

    // The tables within the built model.
    private List<ResourceDescription> Resources()
    {
        byte[] bytes = File.ReadAllBytes(model);
        var assembly = Assembly.Load(bytes);
        return
        [
            .. assembly.GetManifestResourceNames().Select(name => new ResourceDescription(name, () => assembly.GetManifestResourceStream(name)!, isPublic: true)),
        ];
    }
}
