#!/usr/bin/env bash
# Makes the pictures of docs/images anew, each as a browser test saw its page. Look at them before you commit them.
set -euo pipefail
root="$(cd "$(dirname "${BASH_SOURCE[0]}")/.." && pwd)"
# shellcheck source=deploy/machine.sh
source "$root/deploy/machine.sh"

require_dotnet
require_chromium
cd "$root"
seen="$(mktemp -d)"
trap 'rm -rf "$seen"' EXIT
WORKWINDOWS_SCREENSHOTS="$seen" dotnet test --project tests/WorkWindows.Browser.Tests
for picture in docs/images/*.jpg; do
  cp "$seen/$(basename "$picture")" "$picture"
done
say "$(find docs/images -name '*.jpg' | wc -l) pictures made."
