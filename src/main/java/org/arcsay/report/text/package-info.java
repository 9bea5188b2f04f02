/** The report as plain text for pasting into a record. */
@NullMarked
package org.arcsay.report.text;

import org.jspecify.annotations.NullMarked;
