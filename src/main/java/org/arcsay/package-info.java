/** Entry point of the program. */
@NullMarked
package org.arcsay;

import org.jspecify.annotations.NullMarked;
