# Read by run, test, install-packages and .ci/run: the tree, step lines with seconds, plain messages.

tree=$(cd "$(dirname "${BASH_SOURCE[0]}")/../.." && pwd)

stop() {
  printf '\n%s\n' "$*" >&2
  exit 1
}

# step NAME COMMAND...: a line before, the command's own output, a line with its seconds after.
step() {
  local name=$1 began=$SECONDS
  shift
  printf '== %s\n' "$name"
  "$@" || stop "$name failed after $((SECONDS - began)) s."
  printf '   %s: %s s\n' "$name" "$((SECONDS - began))"
}

# with_heartbeat LOG COMMAND...: output goes to LOG; a line of seconds every ten.
with_heartbeat() {
  local log=$1 began=$SECONDS pid result=0
  shift
  "$@" >"$log" 2>&1 </dev/null &
  pid=$!
  while kill -0 "$pid" 2>/dev/null; do
    sleep 1
    if (((SECONDS - began) % 10 == 0)); then printf '   ... %s s\n' "$((SECONDS - began))"; fi
  done
  wait "$pid" || result=$?
  return "$result"
}

# Called by a user through sudo: everything but the packages is done as that user, so that no file
# of the tree ends up belonging to root.
give_back_root() {
  local home
  if [ "$(id -u)" != 0 ] || [ -z "${SUDO_UID:-}" ] || [ "$SUDO_UID" = 0 ]; then return 0; fi
  home=$(getent passwd "$SUDO_UID" | cut -d: -f6)
  local user_id=$SUDO_UID group_id=$SUDO_GID
  unset SUDO_UID SUDO_GID SUDO_USER SUDO_COMMAND
  exec setpriv --reuid "$user_id" --regid "$group_id" --init-groups \
    env HOME="${home:-/tmp}" "$@"
}

# A tree that cannot be written gives a plain message instead of a page from cmake.
need_writable_tree() {
  mkdir -p "$tree/build" 2>/dev/null && [ -w "$tree/build" ] ||
    stop "Cannot write into $tree/build. Make the folder yours, or clone the tree again."
  local stray
  stray=$(find "$tree/build" -maxdepth 2 ! -writable -print -quit 2>/dev/null)
  [ -z "$stray" ] || stop "$stray belongs to another user. Remove the folder build and run this again."
}

# configure PRESET ARGUMENTS...: a first whole build takes twelve source files at a time, which is half
# the work; a tree that is edited goes faster file by file (cmake --preset dev -DCMAKE_UNITY_BUILD=OFF).
# Tests that need no Qt are left to the step asan, which builds and runs them under the sanitizers;
# cmake --preset dev -DJAMBLINE_TESTS_WITHOUT_QT=ON brings them here too.
configure() {
  local batch=()
  mkdir -p "build/$1"
  if [ "$1" = dev ] && [ ! -f build/dev/CMakeCache.txt ]; then
    batch=(-DCMAKE_UNITY_BUILD=ON -DCMAKE_UNITY_BUILD_BATCH_SIZE=12 -DJAMBLINE_TESTS_WITHOUT_QT=OFF)
  fi
  with_heartbeat "build/$1/configure.log" cmake --preset "$1" "${batch[@]}" "${@:2}" && return 0
  tail -n 25 "build/$1/configure.log" >&2
  return 1
}
