# Completion of tagend in PowerShell: add this file's lines to $PROFILE.
Register-ArgumentCompleter -Native -CommandName tagend -ScriptBlock {
    param($word, $line, $cursor)
    tagend "[suggest:$cursor]" "$line" 2> $null |
        Where-Object { $_ -like "$word*" } |
        ForEach-Object { [System.Management.Automation.CompletionResult]::new($_) }
}
