using System.Reflection;
using Mono.Cecil;

namespace LureSim.Tests.Conventions;

/// <summary>Which namespaces of an assembly use which others of it, read from the compiled code.</summary>
internal static class NamespaceGraph
{
    /// <summary>The arrows between namespaces, with a type that makes each.</summary>
    public static IReadOnlyDictionary<(string From, string To), string> Of(Assembly assembly)
    {
        using var module = ModuleDefinition.ReadModule(assembly.Location);
        var arrows = new Dictionary<(string, string), string>();
        foreach (TypeDefinition type in module.GetTypes())
        {
            string from = Namespace(type);
            foreach (TypeReference used in Used(type).SelectMany(Parts))
            {
                if (used.Scope == module && Namespace(used) is var to && to.Length > 0 && from.Length > 0 && to != from)
                    arrows.TryAdd((from, to), $"{type.Name} uses {used.Name}");
            }
        }

        return arrows;
    }

    /// <summary>A way round from a namespace to itself, or null.</summary>
    public static string? Cycle(IReadOnlyCollection<(string From, string To)> arrows)
    {
        foreach (string start in arrows.Select(arrow => arrow.From).Distinct().Order(StringComparer.Ordinal))
        {
            var from = new Dictionary<string, string>();
            var left = new Queue<string>([start]);
            while (left.TryDequeue(out string? at))
            {
                foreach ((_, string next) in arrows.Where(arrow => arrow.From == at))
                {
                    if (next == start)
                        return Way(from, start, at);
                    if (from.TryAdd(next, at))
                        left.Enqueue(next);
                }
            }
        }

        return null;
    }

    private static string Way(Dictionary<string, string> from, string start, string end)
    {
        List<string> way = [start, end];
        while (way[^1] != start && from.TryGetValue(way[^1], out string? before))
            way.Add(before);
        way.Reverse();
        return string.Join(" -> ", way);
    }

    private static string Namespace(TypeReference type) => type.DeclaringType is { } outer ? Namespace(outer) : type.Namespace;

    private static IEnumerable<TypeReference> Used(TypeDefinition type)
    {
        IEnumerable<TypeReference?> used =
        [
            type.BaseType,
            .. type.Interfaces.Select(item => item.InterfaceType),
            .. type.Fields.Select(field => field.FieldType),
            .. type.Methods.SelectMany(method => method.Parameters.Select(parameter => parameter.ParameterType).Append(method.ReturnType)),
            .. type.Methods.Where(method => method.HasBody).SelectMany(method => method.Body.Variables.Select(variable => variable.VariableType)
                .Concat(method.Body.Instructions.SelectMany(instruction => Operand(instruction.Operand)))),
        ];
        return used.OfType<TypeReference>();
    }

    private static IEnumerable<TypeReference> Operand(object? operand) => operand switch
    {
        TypeReference type => [type],
        MethodReference method => [method.DeclaringType, method.ReturnType, .. method is GenericInstanceMethod generic ? generic.GenericArguments : (IEnumerable<TypeReference>)[]],
        FieldReference field => [field.DeclaringType, field.FieldType],
        _ => [],
    };

    private static IEnumerable<TypeReference> Parts(TypeReference type) => type switch
    {
        GenericInstanceType generic => generic.GenericArguments.SelectMany(Parts).Append(generic.ElementType),
        TypeSpecification specification => Parts(specification.ElementType),
        _ => [type],
    };
}
