# Completes what is typed after flushback, in bash. In ~/.bashrc:  source <(flushback completion bash)

_flushback() {
  local line=${COMP_LINE:0:COMP_POINT} word=${COMP_WORDS[COMP_CWORD]} candidate
  # --unit=i is asked for as --unit i; bash has taken it apart already.
  if [[ $line =~ ^(.*[[:space:]]--[a-z-]+)=([^[:space:]]*)$ ]]; then
    line="${BASH_REMATCH[1]} ${BASH_REMATCH[2]}"
    word=${BASH_REMATCH[2]}
  fi
  COMPREPLY=()
  while IFS= read -r candidate; do
    # Options only where one has been begun: elsewhere files are wanted.
    if [[ $candidate == "$word"* && ($candidate != -* || $word == -*) ]]; then
      COMPREPLY+=("$candidate")
    fi
  done < <("$1" "[suggest:${#line}]" "$line" 2>/dev/null)
}

complete -o bashdefault -o default -F _flushback flushback
