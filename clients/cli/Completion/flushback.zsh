#compdef flushback
# Completes what is typed after flushback, in zsh. In ~/.zshrc, after compinit:  source <(flushback completion zsh)

_flushback() {
  # --unit=i is asked for as --unit i.
  local before="${words[1,CURRENT-1]}" line
  if [[ $PREFIX == --*=* ]]; then
    before+=" ${PREFIX%%=*}"
    compset -P '*='
  fi
  line="$before $PREFIX"
  local -a candidates=("${(@f)$("${words[1]}" "[suggest:${#line}]" "$line" 2>/dev/null)}")
  candidates=(${candidates:#})
  # Options only where one has been begun: elsewhere files are wanted.
  [[ $PREFIX == -* ]] || candidates=(${candidates:#-*})
  if (( $#candidates )); then
    compadd -a candidates
  else
    _files
  fi
}

compdef _flushback flushback
