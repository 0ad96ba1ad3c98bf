#!/usr/bin/env bash
# Builds WorkWindows and runs it on this machine, with a private PostgreSQL unless WORKWINDOWS_DATABASE names a server.
set -euo pipefail

root="$(cd "$(dirname "${BASH_SOURCE[0]}")/.." && pwd)"
service="$root/src/WorkWindows.Service"

say() { printf '%s\n' "$*"; }

fail() {
  printf '%s\n' "$*" >&2
  exit 2
}

has_postgres() {
  local folder
  for folder in "${WORKWINDOWS_POSTGRES_BIN:-}" /usr/lib/postgresql/*/bin /usr/libexec/postgresql* /usr/bin \
    /opt/homebrew/opt/postgresql@*/bin /usr/local/opt/postgresql@*/bin; do
    if [[ -n "$folder" && -x "$folder/initdb" ]]; then
      return 0
    fi
  done
  return 1
}

as_root() {
  if [[ "$(id -u)" -eq 0 ]]; then
    "$@"
  elif command -v sudo >/dev/null; then
    sudo "$@"
  else
    fail "Installing needs root, and there is no sudo. Run as root: $*"
  fi
}

install_postgres() {
  say "No PostgreSQL server programs found. Installing PostgreSQL with this machine's package manager ..."
  if command -v apt-get >/dev/null; then
    # The package would start a server of its own on port 5432; only the programs are wanted.
    as_root mkdir -p /etc/postgresql-common
    if [[ ! -e /etc/postgresql-common/createcluster.conf ]]; then
      printf 'create_main_cluster = false\n' | as_root tee /etc/postgresql-common/createcluster.conf >/dev/null
    fi
    as_root apt-get update -q
    as_root env DEBIAN_FRONTEND=noninteractive apt-get install -q -y --no-install-recommends postgresql
  elif command -v dnf >/dev/null; then
    as_root dnf install -y postgresql-server
  elif command -v apk >/dev/null; then
    as_root apk add postgresql
  elif command -v brew >/dev/null; then
    brew install postgresql@17
  else
    fail "None of apt-get, dnf, apk and brew is here. Install PostgreSQL 15 or newer, or set WORKWINDOWS_DATABASE."
  fi
}

command -v dotnet >/dev/null || fail "The .NET 10 SDK is missing: 'dotnet' is not on the PATH."
[[ $'\n'"$(dotnet --list-sdks)" == *$'\n10.'* ]] ||
  fail "The .NET 10 SDK is missing: 'dotnet --list-sdks' names no version 10."

if [[ -z "${WORKWINDOWS_DATABASE:-}" ]] && ! has_postgres; then
  install_postgres
fi

say "Building (the first time this also fetches packages) ..."
dotnet build "$service" --configuration Release --verbosity quiet --nologo -nodeReuse:false

say "Starting ..."
# In place of this shell, so that Ctrl-C reaches the service, which stops what it started.
exec dotnet "$service/bin/Release/net10.0/workwindows.dll" serve "$@"
