#!/usr/bin/env bash
# Known vulnerabilities in what the project is built from, as far as the registries know any.
#
#     tests/vulnerabilities.sh
#
# Exit code 0 when every registry was asked and knows none, 1 when one knows some, 3 when a registry serves no data on
# them: then nothing was found because nothing was checked, and whoever reads the result is told so.
set -euo pipefail

cd "$(dirname "${BASH_SOURCE[0]}")/.."
readonly none=0 found=1 not_checked=3
readonly npm_folders=(clients/node tests/tools tests/interop/dxf-readers tests/interop/manifests
  tests/interop/polygon-offsets tests/clients/node)

# A registry that is named as a source for audits and has no data makes restoring warn, which is an error here.
nuget_serves_data() {
  local folder status=0
  folder=$(mktemp -d)
  cat >"$folder/audit.csproj" <<'EOF'
<Project Sdk="Microsoft.NET.Sdk">
  <PropertyGroup>
    <TargetFramework>net10.0</TargetFramework>
  </PropertyGroup>
  <ItemGroup>
    <PackageReference Include="Google.Protobuf" Version="3.36.2" />
  </ItemGroup>
</Project>
EOF
  cat >"$folder/nuget.config" <<'EOF'
<configuration>
  <auditSources>
    <add key="registry" value="https://api.nuget.org/v3/index.json" />
  </auditSources>
</configuration>
EOF
  dotnet restore "$folder" -warnaserror:NU1905 >/dev/null 2>&1 || status=$?
  rm -r "$folder"
  return "$status"
}

nuget() {
  local listed
  if ! nuget_serves_data; then
    printf 'NuGet: not checked; the registry serves no data on vulnerabilities.\n'
    return "$not_checked"
  fi
  listed=$(dotnet list Flushback.slnx package --vulnerable --include-transitive --format json)
  if grep -q '"vulnerabilities"' <<<"$listed"; then
    printf 'NuGet: known vulnerabilities.\n%s\n' "$listed"
    return "$found"
  fi
  printf 'NuGet: none known.\n'
}

npm_in() {
  local folder=$1 answer
  answer=$(npm audit --prefix "$folder" --package-lock-only --json 2>/dev/null) || true
  if ! grep -q '"auditReportVersion"' <<<"$answer"; then
    printf 'npm, %s: not checked; the registry serves no data on vulnerabilities.\n' "$folder"
    return "$not_checked"
  fi
  if ! grep -q '"total": 0' <<<"$answer"; then
    printf 'npm, %s: known vulnerabilities.\n%s\n' "$folder" "$answer"
    return "$found"
  fi
  printf 'npm, %s: none known.\n' "$folder"
}

worst=$none
# note STATUS: what is found counts above what was not checked.
note() {
  if (($1 == found || worst == found)); then
    worst=$found
  elif (($1 != none)); then
    worst=$not_checked
  fi
}

status=0
nuget || status=$?
note "$status"
for folder in "${npm_folders[@]}"; do
  status=0
  npm_in "$folder" || status=$?
  note "$status"
done
exit "$worst"
