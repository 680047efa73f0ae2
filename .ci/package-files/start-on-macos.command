#!/bin/sh
# Opens the page of gauge-bench in the browser. With words behind it, runs that command instead:
#   ./start-on-macos.command run scenarios/first-steps/a-week-in-the-hut.yaml
# Needs no Java on the machine, writes nothing, takes nothing from PATH.
case $0 in
  */*) here=$(cd "${0%/*}" && pwd) ;;
  *) here=$(pwd) ;;
esac
java=$here/program/java-macos/bin/java
if [ ! -x "$java" ]; then
  echo "$java is missing or may not run: copy the folder again, whole, to your home folder." >&2
  exit 2
fi
# Other people's options must not reach this Java.
unset JAVA_TOOL_OPTIONS JDK_JAVA_OPTIONS _JAVA_OPTIONS CLASSPATH JAVA_HOME
[ "$#" -gt 0 ] || set -- live
# No performance file in /tmp, and the record of a crash goes to the terminal, not to a file.
exec "$java" -XX:-UsePerfData -XX:+ErrorFileToStderr -jar "$here/program/gauge-sim.jar" "$@"
