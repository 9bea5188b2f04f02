/** The command line. The only package that uses picocli and standard output. */
@NullMarked
package org.arcsay.cli;

import org.jspecify.annotations.NullMarked;
