#!/usr/bin/env bash
# Builds WorkWindows and runs it on this machine, with a private PostgreSQL unless WORKWINDOWS_DATABASE names a server.
set -euo pipefail

root="$(cd "$(dirname "${BASH_SOURCE[0]}")/.." && pwd)"
service="$root/src/WorkWindows.Service"

# shellcheck source=deploy/machine.sh
source "$root/deploy/machine.sh"

require_dotnet
if [[ -z "${WORKWINDOWS_DATABASE:-}" ]]; then
  require_postgres
fi

say "Building (the first time this also fetches packages) ..."
dotnet build "$service" --configuration Release --verbosity quiet --nologo -nodeReuse:false \
  -p:RunAnalyzers=false

say "Starting ..."
# In place of this shell, so that Ctrl-C reaches the service, which stops what it started.
exec dotnet "$service/bin/Release/net10.0/workwindows.dll" serve "$@"
