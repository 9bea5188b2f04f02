@echo off
rem Starts Arcsay from a checkout; builds it first where that is needed. Needs a JDK 17 or newer.
setlocal
set "HERE=%~dp0"
if not exist "%HERE%target\arcsay.jar" (
    echo Building Arcsay; the first time this takes a few minutes. 1>&2
    pushd "%HERE%" && call mvnw.cmd -q -B -ntp -DskipTests package 1>&2 & popd
)
java -jar "%HERE%target\arcsay.jar" %*
