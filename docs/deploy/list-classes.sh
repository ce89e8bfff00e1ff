#!/bin/sh
# Writes down which classes a start of the jar loads, in their order, for platform.start.ClassesAhead.
# To be run when libraries or much of the program changed; an old list only helps less.
set -eu
if [ $# -ne 1 ]; then
  echo "usage: list-classes.sh JAR, at the top of the project" >&2
  exit 2
fi
log=$(mktemp)
# starts on an empty database in memory and ends as soon as everything is there
"${JAVA_HOME:+$JAVA_HOME/bin/}java" -Xlog:class+load:file="$log" -Dspring.context.exit=onRefresh -jar "$1" \
  --spring.datasource.url=jdbc:h2:mem:list --server.port=0 > /dev/null
# not those of Java itself, the launcher's, nor what is made while it runs
sed -nE 's/^(\[[^]]*\])+ ([^ ]+) source: (jar|file):.*/\2/p' "$log" \
  | grep -vE '\$\$|Lambda|^org\.springframework\.boot\.loader\.|^jdk\.proxy' \
  > src/main/resources/org/standclear/platform/start/classes-ahead.txt
rm "$log"
wc -l src/main/resources/org/standclear/platform/start/classes-ahead.txt
