#!/bin/sh
# Unpacks the jar into a folder and keeps an archive of the classes that it loads at its start, so that it starts faster.
# To be run anew for every new jar and every new Java: an archive fits only the two it was made with, and is otherwise ignored.
# From Java 25 on the archive also holds linked classes and profiles of methods, which makes the start faster still.
set -eu
if [ $# -ne 2 ]; then
  echo "usage: prepare.sh JAR FOLDER" >&2
  exit 2
fi
java=${JAVA_HOME:+$JAVA_HOME/bin/}java
"$java" -Djarmode=tools -jar "$1" extract --destination "$2"
# absolute: the options are read wherever the program is started from
folder=$(cd "$2" && pwd)
jar=$folder/$(basename "$1")
release=$("$java" -XshowSettings:properties -version 2>&1 | sed -n 's/^ *java.specification.version = //p')
if [ "$release" -ge 25 ]; then
  make=-XX:AOTCacheOutput=$folder/classes.aot
  use=-XX:AOTCache=$folder/classes.aot
else
  make=-XX:ArchiveClassesAtExit=$folder/classes.jsa
  use=-XX:SharedArchiveFile=$folder/classes.jsa
fi
# starts on an empty database in memory and ends as soon as everything is there
"$java" "$make" -Dspring.context.exit=onRefresh -jar "$jar" \
  --spring.datasource.url=jdbc:h2:mem:prepare --server.port=0 > "$2/prepare.log" 2>&1
test -s "${use#*=}"
echo "$use" > "$2/start.options"
echo "Start it with: java -Xmx512m @$2/start.options -jar $jar"
