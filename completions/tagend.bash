# Completion of tagend in bash: source this file in ~/.bashrc, or put it in ~/.local/share/bash-completion/completions.
_tagend() {
    local word=${COMP_WORDS[COMP_CWORD]} found
    COMPREPLY=()
    while IFS= read -r found; do
        [[ $found == "$word"* ]] && COMPREPLY+=("$found")
    done < <(tagend "[suggest:$COMP_POINT]" "$COMP_LINE" 2> /dev/null)
}
complete -o default -F _tagend tagend
