#!/bin/sh
# Opens the page of gauge-bench in the browser. With words behind it, runs that command instead:
#   ./start-on-linux.sh run scenarios/first-steps/a-week-in-the-hut.yaml
# Needs no Java on the machine, writes nothing, takes nothing from PATH.
case $0 in
  */*) here=$(cd "${0%/*}" && pwd) ;;
  *) here=$(pwd) ;;
esac
java=$here/program/java-linux/bin/java
if [ ! -x "$java" ]; then
  if [ -f "$java" ]; then
    echo "This place does not let programs run. Copy the folder to your home folder and" >&2
    echo "start it there; after unpacking with a tool that loses file modes, say first:" >&2
    echo "  chmod -R u+x '$here/program/java-linux'" >&2
  else
    echo "$java is missing: the folder is not complete. Copy it again, whole." >&2
  fi
  exit 2
fi
# Other people's options must not reach this Java.
unset JAVA_TOOL_OPTIONS JDK_JAVA_OPTIONS _JAVA_OPTIONS CLASSPATH JAVA_HOME
# Java reads file names by the locale; without UTF-8 a folder called 'Übung' cannot be found.
case ${LC_ALL:-${LC_CTYPE:-${LANG:-}}} in
  *UTF-8* | *utf8* | *UTF8* | *utf-8*) ;;
  *) LC_ALL=C.UTF-8 && export LC_ALL ;;
esac
[ "$#" -gt 0 ] || set -- live
# No performance file in /tmp, and the record of a crash goes to the terminal, not to a file.
exec "$java" -XX:-UsePerfData -XX:+ErrorFileToStderr -jar "$here/program/gauge-sim.jar" "$@"
