using Mono.Cecil;

namespace LureSim.Tests.Report;

/// <summary>The plotting library was built for an older edition of the drawing library: whatever it calls of it must be in the one that is used.</summary>
public class DrawingLibraryTests
{
    [Fact]
    public void The_drawing_library_has_all_that_the_plotting_library_calls()
    {
        using var plots = AssemblyDefinition.ReadAssembly(Path.Combine(AppContext.BaseDirectory, "OxyPlot.SkiaSharp.dll"));
        using var drawing = AssemblyDefinition.ReadAssembly(Path.Combine(AppContext.BaseDirectory, "SkiaSharp.dll"));
        MemberReference[] called = [.. plots.MainModule.GetMemberReferences().Where(member => member.DeclaringType.Scope?.Name == "SkiaSharp")];
        Assert.True(called.Length > 50, $"{called.Length} calls were found.");
        Assert.Empty(called.Where(member => drawing.MainModule.GetType(member.DeclaringType.FullName) is not { } type || !Has(type, member)).Select(member => member.FullName));
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
