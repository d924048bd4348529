#!/usr/bin/env bash
# Builds what the image holds: the service and nothing else, ready to be run by anybody and written by nobody.
#
#     docker/publish.sh FOLDER
#
# FOLDER must not exist, or be empty. The Dockerfile and the tests call this, so that both have the same files.
set -euo pipefail

if (($# != 1)); then
  printf 'Say where to put the service: docker/publish.sh FOLDER\n' >&2
  exit 2
fi
mkdir -p "$1"
folder=$(cd "$1" && pwd)
if [[ -n $(ls -A "$folder") ]]; then
  printf '%s is not empty; name a new folder.\n' "$folder" >&2
  exit 2
fi

cd "$(dirname "${BASH_SOURCE[0]}")/.."
dotnet publish src/Flushback.Service -c Release -o "$folder"
# Nobody reads docstrings or debugs there.
find "$folder" -maxdepth 1 \( -name 'Flushback.*.xml' -o -name '*.pdb' \) -delete
find "$folder" -type d -exec chmod 0755 {} +
find "$folder" -type f -exec chmod 0644 {} +
chmod 0755 "$folder/Flushback.Service"
