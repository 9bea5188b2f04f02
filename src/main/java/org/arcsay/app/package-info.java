/** Wiring: settings, the open database, the fitted model and the loop from sound to stored entries. */
@NullMarked
package org.arcsay.app;

import org.jspecify.annotations.NullMarked;
