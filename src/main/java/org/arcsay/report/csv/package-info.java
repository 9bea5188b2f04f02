/** Visits as comma-separated values (RFC 4180) and the way back. */
@NullMarked
package org.arcsay.report.csv;

import org.jspecify.annotations.NullMarked;
