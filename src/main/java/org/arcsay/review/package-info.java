/** View models of the review, free of controls and tested without a window. */
@NullMarked
package org.arcsay.review;

import org.jspecify.annotations.NullMarked;
