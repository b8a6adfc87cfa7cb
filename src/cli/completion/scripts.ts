/** What the shells are told: for the Tab key they ask `completion words` for all that may come next, and pick. */

/** By the shell's name. Options are offered only once a `-` was typed: else they would bury the names. */
export const SCRIPTS: ReadonlyMap<string, string> = new Map([
  [
    'bash',
    `# for ~/.bashrc: source <(tankside completion bash)
_tankside() {
  local typed=\${COMP_WORDS[COMP_CWORD]} next
  COMPREPLY=()
  while IFS= read -r next; do
    [[ $next == -* && $typed != -* ]] && continue
    [[ $next == "$typed"* ]] && COMPREPLY+=("$(printf '%q' "$next")")
  done < <(tankside completion words -- "\${COMP_WORDS[@]:1:COMP_CWORD-1}" 2>/dev/null)
}
complete -o default -F _tankside tankside
`,
  ],
  [
    'zsh',
    `# for ~/.zshrc, behind compinit: source <(tankside completion zsh)
_tankside() {
  local -a next
  next=(\${(f)"$(tankside completion words -- "\${(@)words[2,CURRENT-1]}" 2>/dev/null)"})
  [[ $words[CURRENT] == -* ]] || next=(\${next:#-*})
  compadd -a next || _files
}
compdef _tankside tankside
`,
  ],
  [
    'fish',
    `# for ~/.config/fish/completions/tankside.fish
function __tankside_next
    set -l next (tankside completion words -- (commandline -opc)[2..-1] 2>/dev/null)
    string match -q -- '-*' (commandline -ct); or set next (string match -v -- '-*' $next)
    printf '%s\\n' $next
    test -n "$next"; or __fish_complete_path (commandline -ct)
end
complete -c tankside -f -a '(__tankside_next)'
`,
  ],
]);
