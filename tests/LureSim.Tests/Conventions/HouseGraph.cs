using LureSim.Decision;
using LureSim.Report.Figures;
using Mono.Cecil;
using Mono.Cecil.Cil;

namespace LureSim.Tests.Conventions;

/// <summary>Which folder of the house uses which, read from the compiled types: a namespace is a folder.</summary>
internal sealed class HouseGraph
{
    private readonly Dictionary<(string From, string To), int> uses = [];
    private readonly Dictionary<(string From, string To), SortedSet<string>> examples = [];

    private HouseGraph()
    {
    }

    /// <summary>Every namespace of the product, sorted.</summary>
    public IReadOnlyList<string> Rooms { get; private set; } = [];

    /// <summary>Types of each namespace.</summary>
    public Dictionary<string, int> Types { get; } = [];

    /// <summary>The graph of all product assemblies.</summary>
    public static HouseGraph Read() => Shared.Value;

    private static readonly Lazy<HouseGraph> Shared = new(() =>
    {
        var graph = new HouseGraph();
        string folder = Path.GetDirectoryName(typeof(Planner).Assembly.Location)!;
        foreach (string file in Directory.GetFiles(folder, "LureSim*.dll").Where(f => !Path.GetFileName(f).Contains("Tests", StringComparison.Ordinal) && !Path.GetFileName(f).Contains("Fuzz", StringComparison.Ordinal)))
        {
            using var assembly = AssemblyDefinition.ReadAssembly(file);
            foreach (TypeDefinition type in assembly.MainModule.Types) graph.Visit(type, RoomOf(type));
        }

        graph.Rooms = [.. graph.Types.Keys.Order(StringComparer.Ordinal)];
        return graph;
    });

    /// <summary>A type of the product by its full name; null for none.</summary>
    public static Type? TypeNamed(string name) =>
        new[] { typeof(Planner), typeof(Figure), typeof(LureSim.Scenarios.ScenarioReader), typeof(LureSim.Cli.LureSimApp) }.Select(t => t.Assembly.GetType(name)).FirstOrDefault(t => t is not null);

    /// <summary>Uses of one namespace by another: members, bodies and bases that name a type of it.</summary>
    public IEnumerable<(string From, string To, int Count)> Arrows => uses.Select(pair => (pair.Key.From, pair.Key.To, pair.Value)).OrderBy(a => a.From, StringComparer.Ordinal).ThenBy(a => a.To, StringComparer.Ordinal);

    /// <summary>Some types behind an arrow.</summary>
    public string Example(string from, string to) => examples.TryGetValue((from, to), out SortedSet<string>? found) ? string.Join(", ", found.Take(4)) : "";

    /// <summary>Groups of namespaces that use each other in a circle (strongly connected, by Tarjan 1972); empty in a house without cycles.</summary>
    /// <param name="within">Only namespaces that begin so.</param>
    public List<string[]> Cycles(string within)
    {
        string[] nodes = [.. Rooms.Where(r => r == within || r.StartsWith(within + ".", StringComparison.Ordinal))];
        var next = nodes.ToDictionary(n => n, n => uses.Keys.Where(k => k.From == n && nodes.Contains(k.To)).Select(k => k.To).ToArray());
        Dictionary<string, int> index = [], low = [];
        Stack<string> stack = [];
        List<string[]> circles = [];
        void Connect(string node)
        {
            index[node] = low[node] = index.Count;
            stack.Push(node);
            foreach (string other in next[node])
            {
                if (!index.TryGetValue(other, out int found))
                {
                    Connect(other);
                    low[node] = Math.Min(low[node], low[other]);
                }
                else if (stack.Contains(other))
                {
                    low[node] = Math.Min(low[node], found);
                }
            }

            if (low[node] != index[node]) return;
            List<string> group = [];
            string member;
            do group.Add(member = stack.Pop()); while (member != node);
            if (group.Count > 1) circles.Add([.. group.Order(StringComparer.Ordinal)]);
        }

        foreach (string node in nodes.Where(n => !index.ContainsKey(n))) Connect(node);
        return circles;
    }

    private static string RoomOf(TypeReference type)
    {
        while (type.DeclaringType is { } outer) type = outer;
        return type.Namespace;
    }

    private void Visit(TypeDefinition type, string room)
    {
        if (!room.StartsWith("LureSim", StringComparison.Ordinal)) return;
        if (type.DeclaringType is null && !type.Name.StartsWith('<')) Types[room] = Types.GetValueOrDefault(room) + 1;
        string name = type.DeclaringType?.Name ?? type.Name;
        void Use(TypeReference? other)
        {
            switch (other)
            {
                case null or GenericParameter:
                    return;
                case GenericInstanceType generic:
                    foreach (TypeReference argument in generic.GenericArguments) Use(argument);
                    break;
                case TypeSpecification { ElementType: { } element }:
                    Use(element);
                    return;
            }

            string there = RoomOf(other.GetElementType());
            if (there == room || !there.StartsWith("LureSim", StringComparison.Ordinal)) return;
            uses[(room, there)] = uses.GetValueOrDefault((room, there)) + 1;
            if (!examples.TryGetValue((room, there), out SortedSet<string>? set)) examples[(room, there)] = set = new SortedSet<string>(StringComparer.Ordinal);
            set.Add($"{name} -> {other.GetElementType().Name}");
        }

        Use(type.BaseType);
        foreach (InterfaceImplementation i in type.Interfaces) Use(i.InterfaceType);
        foreach (FieldDefinition field in type.Fields) Use(field.FieldType);
        foreach (MethodDefinition method in type.Methods)
        {
            Use(method.ReturnType);
            foreach (ParameterDefinition parameter in method.Parameters) Use(parameter.ParameterType);
            if (!method.HasBody) continue;
            foreach (VariableDefinition variable in method.Body.Variables) Use(variable.VariableType);
            foreach (Instruction instruction in method.Body.Instructions)
            {
                switch (instruction.Operand)
                {
                    case TypeReference used:
                        Use(used);
                        break;
                    case MethodReference called:
                        Use(called.DeclaringType);
                        break;
                    case FieldReference read:
                        Use(read.DeclaringType);
                        break;
                }
            }
        }

        foreach (TypeDefinition nested in type.NestedTypes) Visit(nested, room);
    }
}
