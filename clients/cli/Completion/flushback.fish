# Completes what is typed after flushback, in fish. In ~/.config/fish/config.fish:  flushback completion fish | source

function __flushback_candidates
    set --local line (commandline --current-process --cut-at-cursor | string collect)
    set --local program (commandline --current-process --tokenize)[1]
    # --unit=i is asked for as --unit i; the value is a part of its word.
    set --local option (commandline --current-token --cut-at-cursor | string match --regex '^--[^=]+=')
    set line (string replace --regex '(\s--[a-z-]+)=(\S*)$' '$1 $2' -- $line)
    $program "[suggest:"(string length -- $line)"]" $line 2>/dev/null | string replace --regex '^' -- "$option"
end

complete --command flushback --arguments '(__flushback_candidates)'
