# Shared by site/run, tests/run and .ci/run: what each step needs on the machine, and how each thing is built.
# Source it, do not run it. Every function may be called again at no cost; nothing is done twice.

ROOT=$(cd "$(dirname "${BASH_SOURCE[0]}")/.." && pwd)
LOGS=$ROOT/build/logs
JOBS=${WEARLINE_JOBS:-$(nproc)}
mkdir -p "$LOGS"

log_of() { echo "$LOGS/$(tr -cs 'a-z0-9\n' '-' <<<"${1,,}").log"; }

# step WHAT COMMAND...: one progress line with the time it took; the command's output only if it fails.
step() {
  local what=$1 began=$SECONDS log
  shift
  log=$(log_of "$what")
  printf '%s ... ' "$what"
  if "$@" >"$log" 2>&1 </dev/null; then
    echo "$((SECONDS - began)) s"
    [ -z "${TIMES:-}" ] || printf '%s\t%s\n' "$((SECONDS - began))" "$what" >>"$TIMES"
  else
    echo "FAILED after $((SECONDS - began)) s"
    tail -n "${WEARLINE_LOG_LINES:-60}" "$log" | cut -c1-300
    echo "(whole log: $log)"
    return 1
  fi
}

# What each job needs: a command or a file that shows it is there, and the Debian package that brings it.
needs_of() {
  case $1 in
  native) echo "g++=g++ cmake=cmake ninja=ninja-build ccache=ccache /usr/include/nlohmann/json.hpp=nlohmann-json3-dev
    /usr/include/date/date.h=libhowardhinnant-date-dev /usr/include/CLI/CLI.hpp=libcli11-dev" ;;
  engine-tests) echo "/usr/include/catch2/catch.hpp=catch2" ;;
  wasm) echo "em++=emscripten" ;;
  node) echo "node=nodejs npm=npm /etc/ssl/certs/ca-certificates.crt=ca-certificates" ;;
  chromium) echo "chromium=chromium /usr/share/fonts/truetype/liberation=fonts-liberation" ;;
  scans) echo "/usr/share/fonts/truetype/dejavu=fonts-dejavu-core /usr/share/fonts/truetype/gnutypewriter=fonts-gnutypewriter
    /usr/share/fonts/opentype/courier-prime=fonts-courier-prime" ;;
  firefox) echo "firefox-esr=firefox-esr" ;;
  office) echo "soffice=libreoffice-writer-nogui pdftotext=poppler-utils" ;;
  bench) echo "/usr/include/benchmark/benchmark.h=libbenchmark-dev" ;;
  fuzz) echo "clang++-14=clang-14 /usr/lib/llvm-14/lib/clang/14.0.6/lib/linux/libclang_rt.fuzzer-x86_64.a=libclang-rt-14-dev" ;;
  coverage) echo "clang++-14=clang-14 llvm-cov-14=llvm-14 /usr/lib/llvm-14/lib/clang/14.0.6/lib/linux/libclang_rt.profile-x86_64.a=libclang-rt-14-dev" ;;
  style) echo "clang-format=clang-format clang-tidy-14=clang-tidy-14 cppcheck=cppcheck clang++-14=clang-14" ;;
  *) echo "needs_of: no such job: $1" >&2; return 1 ;;
  esac
}

missing_packages() {
  local job need
  for job in "$@"; do
    for need in $(needs_of "$job"); do
      case ${need%%=*} in
      /*) [ -e "${need%%=*}" ] || echo "${need#*=}" ;;
      *) command -v "${need%%=*}" >/dev/null || echo "${need#*=}" ;;
      esac
    done
  done | sort -u
}

apt_install() {
  local apt=(apt-get -qq -o DPkg::Lock::Timeout=300 -o Dpkg::Use-Pty=0 -o Acquire::Retries=3)
  export DEBIAN_FRONTEND=noninteractive
  "${apt[@]}" install -y --no-install-recommends "$@" || { "${apt[@]}" update && "${apt[@]}" install -y --no-install-recommends "$@"; }
}

# need JOB...: installs the Debian packages these jobs lack.
need() {
  local missing
  missing=$(missing_packages "$@" | tr '\n' ' ')
  [ -z "$missing" ] && return
  if [ "$(id -u)" != 0 ]; then
    echo "Not root, so please install first: sudo apt-get install -y --no-install-recommends $missing"
    return 1
  fi
  # shellcheck disable=SC2086
  step "Install $missing" apt_install $missing
}

# npm_packages FOLDER: what its lock file says, nothing else; again only when the lock file changes.
npm_packages() {
  local folder=$ROOT/$1 lock stamp
  lock=$(sha256sum "$folder/package-lock.json" "$folder/package.json") || return 1
  stamp=$folder/node_modules/.wearline-lock
  [ -f "$stamp" ] && [ "$(cat "$stamp")" = "$lock" ] && return
  step "npm packages of $1" npm ci --prefix "$folder" --no-audit --no-fund --loglevel=error || return 1
  printf '%s\n' "$lock" >"$stamp"
}

# cmake_configure PRESET, cmake_build PRESET: configures, and builds, one of tests/CMakePresets.json, in build/PRESET. A folder that was
# configured otherwise is configured anew.
cmake_configure() (
  cd "$ROOT/tests" || return 1
  grep -qs "^CMAKE_HOME_DIRECTORY:INTERNAL=$ROOT/tests$" "$ROOT/build/$1/CMakeCache.txt" || set -- "$1" --fresh
  cmake "${@:2}" --preset "$1"
)
cmake_build() { cmake_configure "$1" && (cd "$ROOT/tests" && cmake --build --preset "$1" -j "$JOBS"); }

build_native() {
  need native engine-tests && step "Build the engine and the command line" cmake_build native
}

wasm_build() {
  # A cache of Emscripten's own that this user cannot write to would stop the build.
  [ -w "$(em-config CACHE)" ] || export EM_CACHE=$ROOT/build/emscripten-cache
  cmake_build wasm
}
build_wasm() { need native wasm && step "Build the engine for the page" wasm_build; }

bundle_rules() { need node && step "Bundle the rules for the page" node "$ROOT/site/scripts/bundle-rules.mjs"; }

# The page fetches what the first answers need before the rest; wasm-split comes with Emscripten.
split_engine() { step "Take the engine for the page apart" node "$ROOT/wasm/split.mjs"; }

build_site() {
  need node && build_wasm && bundle_rules && split_engine && npm_packages site && step "Build the page" npm run --prefix "$ROOT/site" build
}
