namespace LureSim.Fuzz;

/// <summary>Texts that have broken programs.</summary>
internal static class Texts
{
    /// <summary>Names and titles as people, pasted pages and attackers write them.</summary>
    public static IReadOnlyList<string> Names { get; } =
    [
        "steady", "mine", "The old bridge", "Anse \u00e0 l'ouest", "\u6d77", "\ud83d\udc1f flat", "a\u0301", "12", "true", "null", "~", "-", ".", "..", "con", "../../etc/x", "a/b", "x\\y",
        "=cmd|' /C calc'!A0", "+1+1", "-1+1", "@SUM(A1)", "\t=1", "\u202eabc", "\u200bhidden", "\u2066x\u2069", "\ufeffmark", "<script>alert(1)</script>", "<img src=x onerror=alert(1)>",
        "]]>", "{{ 1 + 1 }}", "{% raw %}", "%s%n", "$(id)", "`id`", "[red]x[/]", "[[", "]", "'\"", "a: b", "a # b", "&a", "*a", "!x", "|", ">", "\u0007bell", "\u001b[31mred", "long long long long long long long long long",
    ];

    /// <summary>Values that mean something to a reader of YAML, of numbers or of units.</summary>
    public static IReadOnlyList<string> Tokens { get; } =
    [
        "\t", "  ", "\n", "\r\n", "\r", ":", ": ", "- ", "#", " #", "&a ", "*a", "!!binary ", "!!python/object:x ", "|", ">", "|+\n", "---\n", "...\n", "%YAML 1.2\n", "<<: *a", "? ", "{", "}", "[", "]", ",", "\"", "'",
        ".nan", ".inf", "-.inf", "1e999", "-1e999", "1e-999", "0x1F", "0o17", "1_000", "1,5", "0,25 oz", "-0", "-0 m", "00", "1/0 oz", "0/1 oz", "1/4/4 oz", "1 1/4 oz", "1 -1/4 oz", "99999999999999999999 m", "0.0000000000000000001 m",
        "NaN", "Infinity", "5 M", "5 m m", "m", "10 ft 6 in", "10 ft 13 in", "10 ft -6 in", "15 C", "68 F", "\u22121 m", "\u00bd oz", "\u0663 m", "null", "~", "true", "yes", "no", "2026-02-30", "24:00", "\u0000", "\u001b[2J", "\u202e", "\ufeff", "\ud800", "\u2028",
        "unweighted", "to bottom", "either", "drawn", "exact", "redfish", "white", "#12345", "#GGGGGG", "paddle tail", "spoon", "hard twitchbait", "topwater walker", "lip: 3 mm", "lip: {}", "lip: []", "lip:", "depht: 1 m",
    ];
}
