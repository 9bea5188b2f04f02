/** Wiring and the main class. */
@NullMarked
package org.arcsay.app;

import org.jspecify.annotations.NullMarked;
