# Completes what is typed after flushback, in fish. In ~/.config/fish/config.fish:  flushback completion fish | source

function __flushback_candidates
    set --local line (commandline --current-process --cut-at-cursor | string collect)
    set --local program (commandline --current-process --tokenize)[1]
    $program "[suggest:"(string length -- $line)"]" $line 2>/dev/null
end

complete --command flushback --arguments '(__flushback_candidates)'
