# What the scripts need of a machine: said before it is installed. Sourced, not run.

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

require_dotnet() {
  command -v dotnet >/dev/null || fail "The .NET 10 SDK is missing: 'dotnet' is not on the PATH."
  [[ $'\n'"$(dotnet --list-sdks)" == *$'\n10.'* ]] ||
    fail "The .NET 10 SDK is missing: 'dotnet --list-sdks' names no version 10."
}

require_postgres() {
  has_postgres || install_postgres
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
    as_root dnf install -y postgresql-server postgresql-contrib
  elif command -v apk >/dev/null; then
    as_root apk add postgresql postgresql-contrib
  elif command -v brew >/dev/null; then
    brew install postgresql@17
  else
    fail "None of apt-get, dnf, apk and brew is here. Install PostgreSQL 15 or newer, or set WORKWINDOWS_DATABASE."
  fi
}

require_chromium() {
  if command -v chromium >/dev/null || command -v chromium-browser >/dev/null; then
    return
  fi
  say "No Chromium found. Installing it with this machine's package manager ..."
  if command -v apt-get >/dev/null; then
    as_root apt-get update -q
    as_root env DEBIAN_FRONTEND=noninteractive apt-get install -q -y --no-install-recommends chromium
  elif command -v dnf >/dev/null; then
    as_root dnf install -y chromium
  elif command -v apk >/dev/null; then
    as_root apk add chromium
  else
    fail "None of apt-get, dnf and apk is here. Install Chromium so that 'chromium' is on the PATH."
  fi
}
