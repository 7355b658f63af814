# SPDX-License-Identifier: GPL-3.0-or-later
# shellcheck shell=sh
# What the checks of the house share: TAP lines, and the lists of files that are looked at.
# UNSOOT_SOURCE_DIR names the tree, which tests/house/breaks sets to trees with a fault.
set -eu
LC_ALL=C.UTF-8
export LC_ALL

cd "${UNSOOT_SOURCE_DIR:?names the tree to be checked}"
scratch=$(mktemp -d)
trap 'rm -rf "$scratch"' EXIT
: >"$scratch/verdicts"

# no_lines NAME: standard input is what is wrong, one fault a line; nothing is right.
no_lines ()
{
  # The end of a pipe is a process of its own, so the count is kept in a file.
  echo "$1" >>"$scratch/verdicts"
  number=$(wc -l <"$scratch/verdicts")
  faults=$(cat)
  if [ -z "$faults" ]; then
    printf 'ok %d - %s\n' "$number" "$1"
  else
    # To standard error: meson shows that of a failed test, and takes the other apart.
    printf '%s\n' "$faults" | sed 's/^/# /' >&2
    printf 'not ok %d - %s\n' "$number" "$1"
  fi
}

# complaints COMMAND …: what it said, where it failed.
complaints ()
{
  said=$("$@" 2>&1) || printf '%s: %s\n' "$*" "${said:-failed}"
}

finish ()
{
  printf '1..%d\n' "$(wc -l <"$scratch/verdicts")"
}

# files PATTERN …: files under the folders that are ours; what builds and `setup` leave is not.
files ()
{
  for pattern in "$@"; do
    find . -name '.git' -prune -o -name 'build*' -type d -prune -o \
      -name '.setup-*' -prune -o -type f -name "$pattern" -print
  done | sed 's,^\./,,' | sort
}

# Scripts have no suffix; their first line tells.
scripts ()
{
  files '*' | grep -v -e '\.png$' -e '\.ttf$' -e '\.pdf$' -e '\.sqlite$' |
    while read -r file; do
      if head -n 1 "$file" | grep -q '^#!.*sh$'; then
        printf '%s\n' "$file"
      fi
    done
  files '*.sh'
}
