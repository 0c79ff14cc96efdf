using System.Globalization;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace LureSim.Mutation;

/// <summary>Finds the places in formulas: arithmetic, numbers, comparisons and signs of doubles and of vectors; no guards, messages or tolerances named as such.</summary>
internal static class SiteFinder
{
    // Numbers below it keep a division or a root away from nothing.
    private const double LeastNumber = 1e-6;

    private static readonly string[] NamesOfTolerances = ["Tolerance", "Accuracy", "Precision"];
    // Asked once for each constant, however many places it has.
    private static readonly System.Runtime.CompilerServices.ConditionalWeakTable<SyntaxNode, object> Free = [];
    private static readonly string[] Guards = ["Guard.", "ArgumentNullException.", "ArgumentOutOfRangeException.", "nameof"];

    /// <summary>All places of a file in the order of the text.</summary>
    public static IEnumerable<MutantSite> In(SyntaxTree tree, SemanticModel model, string file)
    {
        foreach (SyntaxNode node in tree.GetRoot().DescendantNodes())
        {
            if (node is ExpressionSyntax expression && KindOf(expression, model) is { } kind && IsFormula(expression, model) && !Declares(expression)) yield return new(file, expression, kind);
        }
    }

    /// <summary>The declaration of a constant around an expression, or null.</summary>
    public static SyntaxNode? Constant(SyntaxNode node) => node.Ancestors().FirstOrDefault(a =>
        a is FieldDeclarationSyntax { Modifiers: var field } && field.Any(SyntaxKind.ConstKeyword) || a is LocalDeclarationStatementSyntax { IsConst: true });

    private static MutantKind? KindOf(ExpressionSyntax node, SemanticModel model) => node.Kind() switch
    {
        SyntaxKind.AddExpression or SyntaxKind.SubtractExpression when node is BinaryExpressionSyntax b && (IsNumber(b, model) || IsVector(b, model)) => MutantKind.Operator,
        SyntaxKind.MultiplyExpression or SyntaxKind.DivideExpression when node is BinaryExpressionSyntax b && IsNumber(b.Left, model) && IsNumber(b.Right, model) => MutantKind.Operator,
        SyntaxKind.AddAssignmentExpression or SyntaxKind.SubtractAssignmentExpression when node is AssignmentExpressionSyntax a && (IsNumber(a.Left, model) || IsVector(a.Left, model)) => MutantKind.Operator,
        SyntaxKind.MultiplyAssignmentExpression or SyntaxKind.DivideAssignmentExpression when node is AssignmentExpressionSyntax a && IsNumber(a.Left, model) => MutantKind.Operator,
        SyntaxKind.NumericLiteralExpression when node is LiteralExpressionSyntax l && IsNumber(l, model)
            && Math.Abs(Convert.ToDouble(l.Token.Value, CultureInfo.InvariantCulture)) >= LeastNumber => MutantKind.Constant,
        SyntaxKind.LessThanExpression or SyntaxKind.LessThanOrEqualExpression or SyntaxKind.GreaterThanExpression or SyntaxKind.GreaterThanOrEqualExpression
            when node is BinaryExpressionSyntax b && IsNumber(b.Left, model) && IsNumber(b.Right, model) => MutantKind.Comparison,
        SyntaxKind.UnaryMinusExpression when IsNumber(node, model) || IsVector(node, model) => MutantKind.Sign,
        _ => null,
    };

    private static bool IsNumber(ExpressionSyntax node, SemanticModel model) => model.GetTypeInfo(node).ConvertedType?.SpecialType == SpecialType.System_Double;

    private static bool IsVector(ExpressionSyntax node, SemanticModel model) => model.GetTypeInfo(node).Type?.Name == "Vector3d";

    // Both halves of a switched expression may not declare the same name.
    private static bool Declares(ExpressionSyntax node) =>
        node.DescendantNodes().Any(n => n is DeclarationExpressionSyntax or SingleVariableDesignationSyntax or AnonymousFunctionExpressionSyntax or AssignmentExpressionSyntax);

    private static bool IsFormula(ExpressionSyntax node, SemanticModel model)
    {
        foreach (SyntaxNode ancestor in node.Ancestors())
        {
            switch (ancestor)
            {
                case AttributeSyntax or ThrowStatementSyntax or ThrowExpressionSyntax or InterpolatedStringExpressionSyntax or ParameterSyntax or CaseSwitchLabelSyntax or PatternSyntax or EnumMemberDeclarationSyntax:
                case InvocationExpressionSyntax call when Guards.Any(g => call.Expression.ToString().StartsWith(g, StringComparison.Ordinal)):
                case IfStatementSyntax { Statement: var then } branch when branch.Condition.Span.Contains(node.Span) && then.DescendantNodesAndSelf().OfType<ThrowStatementSyntax>().Any():
                case MethodDeclarationSyntax { Identifier.Text: "Validate" }:
                case VariableDeclaratorSyntax variable when NamesOfTolerances.Any(n => variable.Identifier.Text.Contains(n, StringComparison.OrdinalIgnoreCase)):
                    return false;
            }
        }

        return Constant(node) is not { } constant || (bool)Free.GetValue(constant, c => IsFree(c, model));
    }

    // A constant of one number that other constants, defaults and patterns do not need at compile time.
    private static bool IsFree(SyntaxNode constant, SemanticModel model)
    {
        VariableDeclarationSyntax declaration = constant is FieldDeclarationSyntax f ? f.Declaration : ((LocalDeclarationStatementSyntax)constant).Declaration;
        if (declaration.Variables.Count != 1 || model.GetDeclaredSymbol(declaration.Variables[0]) is not { } symbol) return false;
        foreach (SyntaxTree tree in model.Compilation.SyntaxTrees)
        {
            foreach (IdentifierNameSyntax use in tree.GetRoot().DescendantNodes().OfType<IdentifierNameSyntax>().Where(n => n.Identifier.Text == symbol.Name))
            {
                bool fixedAtCompileTime = Constant(use) is not null || use.Ancestors().Any(a => a is AttributeSyntax or ParameterSyntax or CaseSwitchLabelSyntax or PatternSyntax);
                if (fixedAtCompileTime) return false;
            }
        }

        return true;
    }
}
