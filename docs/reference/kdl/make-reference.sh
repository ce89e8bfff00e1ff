#!/usr/bin/env bash
# Makes src/test/resources/reference/kdl anew. Needs a C++ compiler and Debian's liborocos-kdl-dev and libeigen3-dev.
set -eu
cd "$(dirname "$0")/../../.."
build=$(mktemp -d)
trap 'rm -rf "$build"' EXIT
g++ -O1 -std=c++17 -I/usr/include/eigen3 docs/reference/kdl/reference.cpp -o "$build/reference" -lorocos-kdl
mkdir -p src/test/resources/reference/kdl
"$build/reference" src/test/resources/reference/kdl "${1:-20261125}"
