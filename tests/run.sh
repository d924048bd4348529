#!/usr/bin/env bash
# Every check and every test of the project, on a Debian machine with the .NET SDK, node and npm, as root or with sudo.
#
#     tests/run.sh
#
# Installs what else it needs, builds the solution once, runs everything, prints a table and ends with the line
# "N passed, N failed". Exit code 1 when anything failed, was left out, or could not be run: nothing is skipped.
# Logs and results of each line of the table are left in artifacts/checks.
#
# shellcheck disable=SC2317 # Functions are called through check and trap, where it does not see it.
set -euo pipefail

cd "$(dirname "${BASH_SOURCE[0]}")/.."

readonly configuration=Release
readonly logs="$PWD/artifacts/checks"
readonly tools=tests/tools
readonly buf=$tools/node_modules/.bin/buf
readonly chromium=${FLUSHBACK_CHROMIUM:-/usr/bin/chromium}
readonly python=${FLUSHBACK_PYTHON:-/usr/bin/python3}
# What the tests call beside .NET, node and npm, by the names of Debian's packages.
readonly debian_packages='python3-ezdxf chromium fonts-liberation librecad librecad-data libfreecad-python3-0.20
  python3-pyside2.qtwidgets nginx-light bubblewrap util-linux poppler-utils python3-grpcio mypy zsh fish openssl bsdutils'
readonly part_library=/usr/share/librecad/library
readonly modeller=/usr/lib/freecad-python3/lib/Import.so

# Seconds after which a step is ended and counts as failed; each is many times what it takes on two quiet cores.
readonly install_limit=600 build_limit=900 check_limit=300 suite_limit=900
# Suites wait for other processes (client, browser, service) part of their time, so two share two cores well.
readonly suites_at_a_time=2
# Items the sample library has at least; with fewer something was lost on the way.
readonly least_library=20
# What tests/vulnerabilities.sh ends with when a registry has no data.
readonly not_checked=3

export LC_ALL=C.UTF-8 DEBIAN_FRONTEND=noninteractive
export DOTNET_CLI_TELEMETRY_OPTOUT=1 DOTNET_NOLOGO=1 DOTNET_CLI_UI_LANGUAGE=en
# No build node stays behind when the script has ended; the compiler's server goes by itself when it is idle.
export MSBUILDDISABLENODEREUSE=1
# Most processes here live for a second, in which code that watches itself, to be compiled better later, is only slower.
export DOTNET_TieredPGO=0
# Golden files are compared here, never written.
unset FLUSHBACK_UPDATE_GOLDEN

order=()
has_ended=false

# --- Results: a file a line of the table, so that suites may run side by side. ---

# record NAME PASSED FAILED SECONDS
record() {
  printf '%s %s %s\n' "$2" "$3" "$4" >"$logs/$1.result"
}

log_of() {
  printf '%s/%s.log' "$logs" "$1"
}

# bounded NAME LIMIT COMMAND...: runs a command that may not take longer, its output in the log of that name.
bounded() {
  local name=$1 limit=$2
  shift 2
  # Waited for as a job, because only then does a signal to this script end the wait at once.
  timeout --kill-after=10 "$limit" "$@" >"$(log_of "$name")" 2>&1 </dev/null &
  wait "$!"
}

# check NAME LIMIT COMMAND...: a single check; it passes when the command does.
check() {
  local name=$1 limit=$2 start=$SECONDS
  shift 2
  order+=("$name")
  printf '%s ...\n' "$name"
  if bounded "$name" "$limit" "$@"; then
    record "$name" 1 0 $((SECONDS - start))
  else
    record "$name" 0 1 $((SECONDS - start))
    complain "$name" $((SECONDS - start)) "$limit"
    return 1
  fi
}

# complain NAME SECONDS LIMIT: the tests that failed, or the end of the log.
complain() {
  local name=$1 seconds=$2 limit=$3
  printf '\n--- %s failed; from %s:\n' "$name" "$(log_of "$name")"
  if ! grep --max-count=50 --after-context=6 '^  Failed ' "$(log_of "$name")" | cut -c 1-400; then
    tail -n 80 "$(log_of "$name")"
  fi
  if ((seconds >= limit)); then
    printf -- '--- %s was ended after %s seconds.\n' "$name" "$seconds"
  fi
  printf -- '---\n\n'
}

# The table and the last line, however the script comes to its end.
finish() {
  local status=$? name passed failed seconds all_passed=0 all_failed=0
  trap - EXIT
  # shellcheck disable=SC2046 # One word a process is what is wanted.
  kill $(jobs -p) 2>/dev/null || true
  printf '\n%-32s %8s %8s %9s\n' 'suite' 'passed' 'failed' 'seconds'
  for name in "${order[@]}"; do
    if [[ -s $logs/$name.result ]]; then
      read -r passed failed seconds <"$logs/$name.result"
    else
      passed=0 failed=1 seconds='-'
    fi
    printf '%-32s %8s %8s %9s\n' "$name" "$passed" "$failed" "$seconds"
    all_passed=$((all_passed + passed))
    all_failed=$((all_failed + failed))
  done
  if [[ $has_ended == false ]]; then
    printf '%-32s %8s %8s %9s\n' "stopped before the end ($status)" 0 1 '-'
    all_failed=$((all_failed + 1))
  fi
  printf '%-32s %8s %8s %9s\n\n' 'all' "$all_passed" "$all_failed" "$SECONDS"
  printf '%s passed, %s failed\n' "$all_passed" "$all_failed"
  if ((all_failed > 0)); then
    exit 1
  fi
  exit 0
}

# --- Tools ---

# What the tests call beside .NET and npm; installed only when something is missing.
install_packages() {
  if has_referee && has_containment && has_client_tools && [[ -x $chromium && -d $part_library ]]; then
    return 0
  fi
  local as_root=() had_nginx=false
  if [[ -x /usr/sbin/nginx ]]; then
    had_nginx=true
  fi
  if ((EUID != 0)); then
    as_root=(sudo --non-interactive env DEBIAN_FRONTEND="$DEBIAN_FRONTEND")
  fi
  "${as_root[@]}" apt-get update
  # shellcheck disable=SC2086 # One word a package is what is wanted.
  "${as_root[@]}" apt-get install -y --no-install-recommends -o DPkg::Lock::Timeout=120 $debian_packages
  # Installed for the tests, which start it themselves: it is not to serve this machine from now on.
  if [[ $had_nginx == false ]]; then
    "${as_root[@]}" systemctl disable --now nginx 2>/dev/null || true
  fi
}

# Another library for DXF, a CAD program with drawings that other people made, a solid modeller, and a reader of PDF.
has_referee() {
  "$python" -c 'import ezdxf, PySide2.QtWidgets' && command -v librecad && [[ -f $modeller ]] && command -v pdftoppm
}

# The proxy of the compose file, and what runs the service as a container would.
has_containment() {
  command -v /usr/sbin/nginx && command -v bwrap && command -v setpriv
}

# What the Python client runs on and is checked by, and the shells that complete the command line.
has_client_tools() {
  "$python" -c 'import grpc, google.protobuf' && command -v mypy && command -v zsh && command -v fish &&
    command -v openssl && command -v script
}

has_tools() {
  local tool missing=0
  for tool in dotnet node npm "$python" "$chromium"; do
    if command -v "$tool"; then
      "$tool" --version
    else
      printf '%s is missing: install it and run again.\n' "$tool"
      missing=1
    fi
  done
  if ! has_referee || ! has_containment || ! has_client_tools || [[ ! -d $part_library ]]; then
    printf 'Something that the tests call is missing: apt-get install %s\n' "$debian_packages"
    missing=1
  fi
  return "$missing"
}

# --- A check that is more than one command ---

# The commands of the README, on the build that was just made; the report holds every line the README shows of it.
reads_the_first_sample() {
  local folder file line
  folder=$(mktemp -d)
  dotnet run --no-build -c "$configuration" --project clients/cli -- \
    check clients/samples/wagtail-half-stop.dxf --handle --width 3.2mm --out "$folder/report"
  for file in "$folder"/report/*; do
    printf '%s: %s bytes\n' "$(basename "$file")" "$(stat -c %s "$file")"
  done
  [[ $(find "$folder/report" -type f -size +0 | wc -l) -eq 6 ]]
  {
    sed -n '/^## What the report tells/,/^Then/s/^    //p' README.md
    sed -n '/^tells what hand and steel feel/,/^How to read it/s/^    //p' README.md
  } | while IFS= read -r line; do
    grep -Fxq -- "$line" <(sed 's/ *$//' "$folder/report/report.txt") || {
      printf 'README.md shows a line that the report does not have: %s\n' "$line"
      exit 1
    }
  done
  rm -r "$folder"
}

# The sample library against its baselines: every item that is as before is a pass.
regress_library() {
  local name=sample-library start=$SECONDS status=0 all same
  local results="$logs/$name"
  order+=("$name")
  printf '%s ...\n' "$name"
  bounded "$name" "$check_limit" dotnet run --no-build -c "$configuration" --project clients/cli -- \
    regress clients/samples/library --out "$results" || status=$?
  all=$(outcomes '' "$results/regress.json")
  same=$(outcomes same "$results/regress.json")
  if ((status != 0 && all == same)) || ((all < least_library)); then
    all=$((all + 1))
  fi
  record "$name" "$same" $((all - same)) $((SECONDS - start))
  if ((all > same)); then
    complain "$name" $((SECONDS - start)) "$check_limit"
  fi
}

# outcomes WHICH FILE: how many items have an outcome that begins so, 0 when there is no file.
outcomes() {
  local found=''
  if [[ -s $2 ]]; then
    found=$(grep -c "\"outcome\": \"$1" "$2" || true)
  fi
  printf '%s' "${found:-0}"
}

# Known vulnerabilities of what is built from. A registry without data on them is no pass and no failure: it is told.
audit() {
  local name=vulnerabilities start=$SECONDS status=0
  printf '%s ...\n' "$name"
  bounded "$name" "$check_limit" tests/vulnerabilities.sh || status=$?
  if ((status == not_checked)); then
    sed 's/^/--- /' "$(log_of "$name")"
    return 0
  fi
  order+=("$name")
  if ((status == 0)); then
    record "$name" 1 0 $((SECONDS - start))
  else
    record "$name" 0 1 $((SECONDS - start))
    complain "$name" $((SECONDS - start)) "$check_limit"
  fi
}

# --- Suites ---

# run_suite NAME PROJECT: a test project; a test that was skipped counts as failed, and so does a suite without tests.
run_suite() {
  local name=$1 project=$2 start=$SECONDS status=0 total passed failed
  local trx="$logs/$name.trx"
  # shellcheck disable=SC2046 # One word a process is what is wanted.
  trap 'kill $(jobs -p); exit 143' TERM
  bounded "$name" "$suite_limit" \
    dotnet test "$project" --no-build -c "$configuration" \
    --results-directory "$logs" --logger "trx;LogFileName=$name.trx" || status=$?
  total=$(counter total "$trx")
  passed=$(counter passed "$trx")
  failed=$((total - passed))
  if ((status != 0 && failed == 0)) || ((total == 0)); then
    failed=$((failed + 1))
  fi
  record "$name" "$passed" "$failed" $((SECONDS - start))
  if ((failed > 0)); then
    complain "$name" $((SECONDS - start)) "$suite_limit"
  else
    printf '%s: %s passed\n' "$name" "$passed"
  fi
}

# run_client NAME COMMAND...: the tests of a client in its own language, which end with how many there were and passed.
run_client() {
  local name=$1 start=$SECONDS status=0 total passed failed
  shift
  # shellcheck disable=SC2046 # One word a process is what is wanted.
  trap 'kill $(jobs -p); exit 143' TERM
  bounded "$name" "$suite_limit" "$@" || status=$?
  total=$(told tests "$(log_of "$name")")
  passed=$(told pass "$(log_of "$name")")
  failed=$((total - passed))
  if ((status != 0 && failed == 0)) || ((total == 0)); then
    failed=$((failed + 1))
  fi
  record "$name" "$passed" "$failed" $((SECONDS - start))
  if ((failed > 0)); then
    complain "$name" $((SECONDS - start)) "$suite_limit"
  else
    printf '%s: %s passed\n' "$name" "$passed"
  fi
}

# told WORD LOG: the number after that word at the end of a log, 0 when there is none.
told() {
  local found
  found=$(sed -n "s/^# $1 \([0-9]*\)$/\1/p" "$2" | tail -n 1)
  printf '%s' "${found:-0}"
}

# counter NAME FILE: a number of the results file, 0 when there is none.
counter() {
  local found=''
  if [[ -s $2 ]]; then
    found=$(sed -n "s/.*<Counters[^>]* $1=\"\([0-9]*\)\".*/\1/p" "$2" | head -n 1)
  fi
  printf '%s' "${found:-0}"
}

run_suites() {
  local project name
  printf 'test suites ...\n'
  for project in tests/*.Tests/*.csproj; do
    name=$(basename "$project" .csproj)
    in_turn "$name" run_suite "$name" "$project"
  done
  in_turn client-python run_client client-python "$python" tests/clients/run_tests.py tests/clients/python
  in_turn client-freecad run_client client-freecad "$python" tests/clients/run_tests.py tests/clients/freecad
  in_turn client-node run_client client-node node --test --test-reporter=tap tests/clients/node/client.test.js
  wait
}

# in_turn NAME COMMAND...: runs a suite beside others, no more of them than share the cores well.
in_turn() {
  order+=("$1")
  shift
  while (($(jobs -rp | wc -l) >= suites_at_a_time)); do
    wait -n || true
  done
  "$@" &
}

# The suites of a solution that does not build are failed, not left out.
fail_suites() {
  local project name
  for project in tests/*.Tests/*.csproj; do
    name=$(basename "$project" .csproj)
    order+=("$name")
    record "$name" 0 1 0
  done
  for name in client-python client-freecad client-node; do
    order+=("$name")
    record "$name" 0 1 0
  done
}

# --- All of it ---

main() {
  rm -rf "$logs"
  mkdir -p "$logs"
  trap finish EXIT
  trap 'exit 130' INT
  trap 'exit 143' TERM

  # Functions are checks too: timeout needs a command, so they run in a shell of their own.
  export configuration chromium python part_library modeller debian_packages
  export -f install_packages has_referee has_containment has_client_tools has_tools reads_the_first_sample
  local in_shell=(bash -euo pipefail -c)

  check packages "$install_limit" "${in_shell[@]}" install_packages || true
  check tools "$check_limit" "${in_shell[@]}" has_tools || true
  check npm "$install_limit" npm ci --prefix "$tools" --ignore-scripts --no-audit --no-fund || true
  check dxf-readers "$install_limit" \
    npm ci --prefix tests/interop/dxf-readers --ignore-scripts --no-audit --no-fund || true
  check polygon-offsets "$install_limit" \
    npm ci --prefix tests/interop/polygon-offsets --ignore-scripts --no-audit --no-fund || true
  check manifest-schemas "$install_limit" \
    npm ci --prefix tests/interop/manifests --ignore-scripts --no-audit --no-fund || true
  check node-client-packages "$install_limit" \
    npm ci --prefix clients/node --ignore-scripts --no-audit --no-fund || true
  check node-client-tests "$install_limit" \
    npm ci --prefix tests/clients/node --ignore-scripts --no-audit --no-fund || true
  check node-client-types "$check_limit" npm run --prefix clients/node build || true
  check python-client-types "$check_limit" \
    mypy --config-file tests/clients/python/mypy.ini clients/python/flushback.py clients/python/check_folder.py || true
  check buf-lint "$check_limit" "$buf" lint protos || true
  check buf-breaking "$check_limit" "$buf" breaking protos --against protos/released.binpb || true
  check dotnet-tools "$install_limit" dotnet tool restore || true
  audit
  check format "$check_limit" dotnet csharpier check . || true
  if check build "$build_limit" dotnet build Flushback.slnx -c "$configuration"; then
    check first-command "$check_limit" "${in_shell[@]}" reads_the_first_sample || true
    regress_library
    run_suites
  else
    fail_suites
  fi
  has_ended=true
  # Ends here, not at the end of a file that may have been edited since.
  exit
}

main
