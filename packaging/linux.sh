#!/bin/sh
# Builds a self-contained program for this Linux machine: an app image and, where dpkg-deb is there, a .deb.
# Needs a JDK 17 or newer with jpackage; for the .deb also the packages dpkg and fakeroot (Debian, Ubuntu).
# Usage: packaging/linux.sh [FOLDER]    the result lies in FOLDER, target/package where none is named
set -e
cd "$(dirname -- "$0")/.."
out=${1:-target/package}
. packaging/common.sh
collect "$out/input"
rm -rf "$out/arcsay" "$out"/arcsay_*.deb
jpackage @packaging/common.options --type app-image --input "$out/input" --dest "$out" \
    --app-version "$version" --icon packaging/arcsay.png
echo "app image: $out/arcsay ($(du -sm "$out/arcsay" | cut -f1) MB)"
if command -v dpkg-deb > /dev/null && command -v fakeroot > /dev/null; then
    jpackage --type deb --name arcsay --app-image "$out/arcsay" --dest "$out" --app-version "$version" \
        --linux-package-name arcsay --linux-app-category science --linux-menu-group "Office;MedicalSoftware" \
        --resource-dir packaging/linux --linux-shortcut --linux-package-deps "libgtk-3-0" --linux-deb-maintainer "arcsay@localhost" --license-file LICENSE --icon packaging/arcsay.png \
        --description "Offline voice-dictation capture for hand therapists"
    ls -l "$out"/arcsay_*.deb
else
    echo "no .deb: dpkg-deb or fakeroot is missing"
fi
