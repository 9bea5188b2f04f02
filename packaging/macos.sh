#!/bin/sh
# NOT TESTED: written without a Mac at hand. Builds Arcsay.app and a .dmg on macOS with a JDK 17 or newer.
# Usage: packaging/macos.sh [FOLDER]
#
# macOS asks before a program may hear. The text of that question is NSMicrophoneUsageDescription in
# packaging/macos/Info.plist; without it the system ends the program, or delivers silence.
# A package that leaves this machine has to be signed and notarised (--mac-sign, and then "xcrun notarytool"), with the
# entitlement com.apple.security.device.audio-input in packaging/macos/arcsay.entitlements.
set -e
cd "$(dirname -- "$0")/.."
out=${1:-target/package}
. packaging/common.sh
collect "$out/input"
# The first number of a version must not be 0 on macOS.
jpackage @packaging/common.options --type app-image --input "$out/input" --dest "$out" --app-version "1.${version#*.}" \
    --resource-dir packaging/macos --mac-package-identifier org.arcsay --mac-package-name Arcsay
jpackage --type dmg --name arcsay --app-image "$out/arcsay.app" --dest "$out" --app-version "1.${version#*.}" \
    --license-file LICENSE
