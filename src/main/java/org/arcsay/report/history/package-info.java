/** View model of the history: visits of a patient beside each other, free of controls and tested without a window. */
@NullMarked
package org.arcsay.report.history;

import org.jspecify.annotations.NullMarked;
