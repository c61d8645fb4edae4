namespace Offcuts.Commands;

/// <summary>
/// Scripts that ask the program itself what may come next: each calls <c>offcuts "[suggest:POSITION]" "LINE"</c>.
/// </summary>
internal static class CompletionScripts
{
    /// <summary>The script of a shell.</summary>
    public static string Of(string shell) => shell switch
    {
        "bash" => """
            _offcuts() {
                local IFS=$'\n'
                COMPREPLY=($(compgen -W "$(offcuts "[suggest:${COMP_POINT}]" "${COMP_LINE}" 2>/dev/null)" -- "${COMP_WORDS[COMP_CWORD]}"))
            }
            complete -o default -F _offcuts offcuts
            """,
        "zsh" => """
            _offcuts() {
                local -a found
                found=("${(@f)$(offcuts "[suggest:${CURSOR}]" "${BUFFER}" 2>/dev/null)}")
                compadd -a found
            }
            compdef _offcuts offcuts
            """,
        "fish" => """
            complete -c offcuts -a '(set -l line (commandline -cp); offcuts "[suggest:"(string length -- $line)"]" $line 2>/dev/null)'
            """,
        "pwsh" => """
            Register-ArgumentCompleter -Native -CommandName offcuts -ScriptBlock {
                param($word, $line, $position)
                offcuts "[suggest:$position]" "$line" | ForEach-Object { [System.Management.Automation.CompletionResult]::new($_, $_, 'ParameterValue', $_) }
            }
            """,
        _ => throw new ArgumentOutOfRangeException(nameof(shell)),
    };
}
