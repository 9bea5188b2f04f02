/** The report as data: everything the writers need, computed once. */
@NullMarked
package org.arcsay.report.content;

import org.jspecify.annotations.NullMarked;
