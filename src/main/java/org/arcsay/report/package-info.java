/** Reports as data and their writers. */
@NullMarked
package org.arcsay.report;

import org.jspecify.annotations.NullMarked;
