# Read by the scripts beside it: builds the program and collects what goes into a package.
version=$(sed -n 's:.*<version>\(.*\)</version>.*:\1:p' pom.xml | head -1)

collect() {
    [ "${ARCSAY_BUILT:-no}" = yes ] || ./mvnw -q -B -ntp -DskipTests package
    ./mvnw -q -B -ntp -Psbom cyclonedx:makeBom
    rm -rf "$1"
    mkdir -p "$1/lib"
    cp target/arcsay.jar "$1/"
    cp target/lib/*.jar "$1/lib/"
    cp LICENSE target/arcsay-sbom.json "$1/"
}
