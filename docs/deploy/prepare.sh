#!/bin/sh
# Unpacks the jar into a folder and keeps an archive of the classes that it loads at its start, so that it starts faster.
# To be run anew for every new jar and every new Java: an archive fits only the two it was made with, and is otherwise ignored.
set -eu
if [ $# -ne 2 ]; then
  echo "usage: prepare.sh JAR FOLDER" >&2
  exit 2
fi
java -Djarmode=tools -jar "$1" extract --destination "$2"
jar=$2/$(basename "$1")
# starts on an empty database in memory and ends as soon as everything is there
java -XX:ArchiveClassesAtExit="$2/classes.jsa" -Dspring.context.exit=onRefresh -jar "$jar" \
  --spring.datasource.url=jdbc:h2:mem:prepare --server.port=0 > "$2/prepare.log" 2>&1
test -s "$2/classes.jsa"
echo "Start it with: java -Xmx512m -XX:SharedArchiveFile=$2/classes.jsa -jar $jar"
