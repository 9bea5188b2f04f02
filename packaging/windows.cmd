@echo off
rem NOT TESTED: written without Windows at hand. Builds an app image and an .msi with a JDK 17 or newer.
rem The .msi needs the WiX toolset that the JDK's jpackage names (WiX 3 for JDK 17).
rem Usage: packaging\windows.cmd [FOLDER]
setlocal
cd /d "%~dp0.."
set "OUT=%~1"
if "%OUT%"=="" set "OUT=target\package"
call mvnw.cmd -q -B -ntp -DskipTests package || exit /b 1
call mvnw.cmd -q -B -ntp -Psbom cyclonedx:makeBom || exit /b 1
if exist "%OUT%\input" rmdir /s /q "%OUT%\input"
mkdir "%OUT%\input\lib"
copy target\arcsay.jar "%OUT%\input\" > nul
copy target\lib\*.jar "%OUT%\input\lib\" > nul
copy LICENSE "%OUT%\input\" > nul
copy target\arcsay-sbom.json "%OUT%\input\" > nul
rem --win-console keeps the commands usable in a terminal. Allow the microphone under Settings, Privacy, Microphone,
rem "Let desktop apps access your microphone".
jpackage @packaging\common.options --type app-image --input "%OUT%\input" --dest "%OUT%" --app-version 0.1.0 --win-console || exit /b 1
jpackage --type msi --name arcsay --app-image "%OUT%\arcsay" --dest "%OUT%" --app-version 0.1.0 --win-menu --win-shortcut --win-per-user-install --license-file LICENSE
