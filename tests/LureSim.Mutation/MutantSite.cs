using System.Globalization;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace LureSim.Mutation;

/// <summary>A place in a formula that can be made wrong.</summary>
/// <param name="File">File, from the folder src/LureSim.</param>
/// <param name="Node">The expression.</param>
/// <param name="Kind">How.</param>
/// <param name="Given">The wrong expression where it does not follow from the kind.</param>
internal sealed record MutantSite(string File, ExpressionSyntax Node, MutantKind Kind, string? Given = null)
{
    private const double Factor = 1.2;

    /// <summary>Folder of src/LureSim.</summary>
    public string Folder => File[..File.IndexOf('/', StringComparison.Ordinal)];

    /// <summary>Line, from 1.</summary>
    public int Line => Node.GetLocation().GetLineSpan().StartLinePosition.Line + 1;

    /// <summary>The wrong expression, for the report.</summary>
    public string After => Wrong(Node).ToString();

    /// <summary>The expression that is right or wrong by the number of the mutant at work.</summary>
    /// <param name="number">The mutant's number.</param>
    /// <param name="rewritten">The expression, with other mutants inside it perhaps.</param>
    public ExpressionSyntax Switched(int number, ExpressionSyntax rewritten) => rewritten is AssignmentExpressionSyntax assignment
        ? assignment.WithRight(Either(number, Inverse(assignment), SyntaxFactory.ParenthesizedExpression(assignment.Right)))
        : Either(number, SyntaxFactory.ParenthesizedExpression(Wrong(rewritten)), SyntaxFactory.ParenthesizedExpression(rewritten.WithoutTrivia())).WithTriviaFrom(rewritten);

    private static ParenthesizedExpressionSyntax Either(int number, ExpressionSyntax wrong, ExpressionSyntax right) =>
        SyntaxFactory.ParenthesizedExpression(SyntaxFactory.ConditionalExpression(
            SyntaxFactory.ParseExpression(string.Create(CultureInfo.InvariantCulture, $"global::LureSim.{Schemata.SwitchType}.Number == {number}")), wrong, right));

    private static ExpressionSyntax Inverse(AssignmentExpressionSyntax assignment)
    {
        ExpressionSyntax operand = SyntaxFactory.ParenthesizedExpression(assignment.Right);
        return assignment.Kind() is SyntaxKind.AddAssignmentExpression or SyntaxKind.SubtractAssignmentExpression
            ? SyntaxFactory.PrefixUnaryExpression(SyntaxKind.UnaryMinusExpression, operand)
            : SyntaxFactory.BinaryExpression(SyntaxKind.DivideExpression, SyntaxFactory.ParseExpression("1.0"), operand);
    }

    private ExpressionSyntax Wrong(ExpressionSyntax node) => Given is not null ? SyntaxFactory.ParseExpression(Given) : node switch
    {
        BinaryExpressionSyntax b => SyntaxFactory.BinaryExpression(Opposite(b.Kind()), b.Left, Token(Opposite(b.Kind()), b.OperatorToken), b.Right),
        PrefixUnaryExpressionSyntax p => p.Operand,
        AssignmentExpressionSyntax a => SyntaxFactory.AssignmentExpression(OppositeAssignment(a.Kind()), a.Left, Token(OppositeAssignment(a.Kind()), a.OperatorToken), a.Right),
        LiteralExpressionSyntax l => SyntaxFactory.ParseExpression((Convert.ToDouble(l.Token.Value, CultureInfo.InvariantCulture) * Factor).ToString("0.0###############E+0", CultureInfo.InvariantCulture)),
        _ => throw new ArgumentOutOfRangeException(nameof(node), node.Kind(), "No mutant of this kind of expression is known."),
    };

    private static SyntaxToken Token(SyntaxKind expression, SyntaxToken old) => SyntaxFactory.Token(expression switch
    {
        SyntaxKind.AddExpression => SyntaxKind.PlusToken,
        SyntaxKind.SubtractExpression => SyntaxKind.MinusToken,
        SyntaxKind.MultiplyExpression => SyntaxKind.AsteriskToken,
        SyntaxKind.DivideExpression => SyntaxKind.SlashToken,
        SyntaxKind.LessThanExpression => SyntaxKind.LessThanToken,
        SyntaxKind.LessThanOrEqualExpression => SyntaxKind.LessThanEqualsToken,
        SyntaxKind.GreaterThanExpression => SyntaxKind.GreaterThanToken,
        SyntaxKind.GreaterThanOrEqualExpression => SyntaxKind.GreaterThanEqualsToken,
        SyntaxKind.AddAssignmentExpression => SyntaxKind.PlusEqualsToken,
        SyntaxKind.SubtractAssignmentExpression => SyntaxKind.MinusEqualsToken,
        SyntaxKind.MultiplyAssignmentExpression => SyntaxKind.AsteriskEqualsToken,
        SyntaxKind.DivideAssignmentExpression => SyntaxKind.SlashEqualsToken,
        _ => throw new ArgumentOutOfRangeException(nameof(expression), expression, "No token of this kind of expression is known."),
    }).WithTriviaFrom(old);

    private static SyntaxKind Opposite(SyntaxKind kind) => kind switch
    {
        SyntaxKind.AddExpression => SyntaxKind.SubtractExpression,
        SyntaxKind.SubtractExpression => SyntaxKind.AddExpression,
        SyntaxKind.MultiplyExpression => SyntaxKind.DivideExpression,
        SyntaxKind.DivideExpression => SyntaxKind.MultiplyExpression,
        SyntaxKind.LessThanExpression => SyntaxKind.GreaterThanOrEqualExpression,
        SyntaxKind.LessThanOrEqualExpression => SyntaxKind.GreaterThanExpression,
        SyntaxKind.GreaterThanExpression => SyntaxKind.LessThanOrEqualExpression,
        SyntaxKind.GreaterThanOrEqualExpression => SyntaxKind.LessThanExpression,
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "No opposite of this operator is known."),
    };

    private static SyntaxKind OppositeAssignment(SyntaxKind kind) => kind switch
    {
        SyntaxKind.AddAssignmentExpression => SyntaxKind.SubtractAssignmentExpression,
        SyntaxKind.SubtractAssignmentExpression => SyntaxKind.AddAssignmentExpression,
        SyntaxKind.MultiplyAssignmentExpression => SyntaxKind.DivideAssignmentExpression,
        SyntaxKind.DivideAssignmentExpression => SyntaxKind.MultiplyAssignmentExpression,
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "No opposite of this operator is known."),
    };
}
