@echo off
rem Opens the page of gauge-bench in the browser. With words behind it, runs that command instead:
rem   start-on-windows.cmd run scenarios\first-steps\a-week-in-the-hut.yaml
rem Needs no Java on the machine, writes nothing, takes nothing from PATH.
setlocal
rem Other people's options must not reach this Java.
set "JAVA_TOOL_OPTIONS="
set "JDK_JAVA_OPTIONS="
set "_JAVA_OPTIONS="
set "CLASSPATH="
set "JAVA_HOME="
set "here=%~dp0"
if not exist "%here%program\java-windows\bin\java.exe" (
  echo The folder is not complete: program\java-windows is missing. Copy it again, whole.
  pause
  exit /b 2
)
set "words=%*"
if not defined words set "words=live"
rem No performance file in TEMP, and the record of a crash goes to this window, not to a file.
"%here%program\java-windows\bin\java.exe" -XX:-UsePerfData -XX:+ErrorFileToStderr -jar "%here%program\gauge-sim.jar" %words%
set "code=%ERRORLEVEL%"
rem A window that a double click opened would close before anybody reads why.
if "%~1"=="" if not "%code%"=="0" pause
exit /b %code%
