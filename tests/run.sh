#!/usr/bin/env bash
# Installs what the tests need, builds with warnings as errors, and runs every test. The last line is
# "N passed, N failed". The database is WORKWINDOWS_TEST_DATABASE if set, else a container, else local programs.
set -euo pipefail

root="$(cd "$(dirname "${BASH_SOURCE[0]}")/.." && pwd)"
# shellcheck source=deploy/machine.sh
source "$root/deploy/machine.sh"

require_dotnet
if [[ -z "${WORKWINDOWS_TEST_DATABASE:-}" ]] && ! docker info >/dev/null 2>&1; then
  require_postgres
fi
require_chromium

cd "$root"
say "Building ..."
dotnet build WorkWindows.sln --nologo --verbosity quiet -nodeReuse:false
say "Testing ..."
log="$(mktemp)"
trap 'rm -f "$log"' EXIT
status=0
# One project at a time: they share the machine's cores with the servers and the browser that they start.
dotnet test --solution WorkWindows.sln --no-build --max-parallel-test-modules 1 2>&1 | tee "$log" || status=$?
passed="$(sed -n 's/^  succeeded: \([0-9]*\)$/\1/p' "$log" | tail -n 1)"
failed="$(sed -n 's/^  failed: \([0-9]*\)$/\1/p' "$log" | tail -n 1)"
if [[ -z "$passed" || "$passed" -eq 0 ]]; then
  say "No test ran." >&2
  exit 1
fi
say "$passed passed, ${failed:-0} failed"
exit "$status"
