@echo off
rem Starts Chillwright as the shell script beside this file does; see the reasons there.
setlocal
set "JAVA=java"
if defined JAVA_HOME if exist "%JAVA_HOME%\bin\java.exe" set "JAVA=%JAVA_HOME%\bin\java.exe"
set "FLAGS=-XX:+UseSerialGC -XX:TieredStopAtLevel=1"
set "SERVING=-XX:+UseSerialGC -Xms16m -Xmn8m -Xmx512m -XX:Tier4InvocationThreshold=30000 -XX:Tier4MinInvocationThreshold=5000 -XX:Tier4CompileThreshold=50000 -XX:Tier4BackEdgeThreshold=200000"
if "%~1"=="serve" set "FLAGS=%SERVING%"
if "%~1"=="demo" set "FLAGS=%SERVING%"
if "%~1"=="import" set "FLAGS=-XX:+UseParallelGC -XX:InitialRAMPercentage=25"
if "%~1"=="recompute" set "FLAGS=-XX:+UseParallelGC -XX:InitialRAMPercentage=25"
set "ARCHIVE="
if exist "%~dp0chillwright.jsa" set ARCHIVE="-XX:SharedArchiveFile=%~dp0chillwright.jsa"
"%JAVA%" -Xlog:disable -Xlog:all=warning:stderr -Xlog:cds*=off:stderr -Xlog:class+path*=off:stderr %FLAGS% %CHILLWRIGHT_JAVA_OPTIONS% %ARCHIVE% -jar "%~dp0chillwright.jar" %*
exit /b %ERRORLEVEL%
