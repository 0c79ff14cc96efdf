using Mono.Cecil;

namespace LureSim.Tests.Report;

/// <summary>
/// Why the drawing library is pinned: the plotting library calls members of it that its maintained line no longer has. The day this fails, both can be
/// brought up together (docs/decisions/rendering.md).
/// </summary>
public class DrawingLibraryTests
{
    [Fact]
    public void The_plotting_library_cannot_run_on_the_maintained_drawing_library()
    {
        string[] missing = Missing(Path.Combine(Packages, "skiasharp", "3.119.4", "lib", "net9.0", "SkiaSharp.dll"));
        Assert.NotEmpty(missing);
    }

    [Fact]
    public void It_runs_on_the_pinned_one() => Assert.Empty(Missing(Path.Combine(AppContext.BaseDirectory, "SkiaSharp.dll")));

    private static string Packages => Environment.GetEnvironmentVariable("NUGET_PACKAGES") is { Length: > 0 } own ? own : Path.Combine(Environment.GetFolderPath(Environment.SpecialFolder.UserProfile), ".nuget", "packages");

    // Members of the drawing library that the plotting library calls and that an edition of it does not have.
    private static string[] Missing(string edition)
    {
        using var plots = AssemblyDefinition.ReadAssembly(Path.Combine(AppContext.BaseDirectory, "OxyPlot.SkiaSharp.dll"));
        using var drawing = AssemblyDefinition.ReadAssembly(edition);
        return [.. plots.MainModule.GetMemberReferences()
            .Where(member => member.DeclaringType.Scope?.Name == "SkiaSharp" && drawing.MainModule.GetType(member.DeclaringType.FullName) is var type && (type is null || !Has(type, member)))
            .Select(member => member.FullName).Order(StringComparer.Ordinal)];
    }

    private static bool Has(TypeDefinition type, MemberReference member)
    {
        for (TypeDefinition? at = type; at is not null; at = at.BaseType is { } up ? type.Module.GetType(up.FullName) : null)
        {
            if (member is FieldReference ? at.Fields.Any(field => field.Name == member.Name) : at.Methods.Any(method => method.Name == member.Name && Signature(method) == Signature((MethodReference)member)))
                return true;
        }

        return false;
    }

    private static string Signature(MethodReference method) => $"{method.ReturnType.FullName}({string.Join(',', method.Parameters.Select(parameter => parameter.ParameterType.FullName))})";
}
