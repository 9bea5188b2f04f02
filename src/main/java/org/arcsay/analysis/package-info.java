/** Clinical computation: norms, measurement error, totals, comparison and notation. */
@NullMarked
package org.arcsay.analysis;

import org.jspecify.annotations.NullMarked;
