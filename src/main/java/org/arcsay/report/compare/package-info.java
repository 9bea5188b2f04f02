/** View model of the comparison: visits of a patient beside each other, free of controls and tested without a window. */
@NullMarked
package org.arcsay.report.compare;

import org.jspecify.annotations.NullMarked;
