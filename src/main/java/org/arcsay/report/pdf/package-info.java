/** The report as PDF: one page a thumb, legible without colour. */
@NullMarked
package org.arcsay.report.pdf;

import org.jspecify.annotations.NullMarked;
