/** How well recordings are understood: word errors, and above all right, wrong, refused and asked readings. */
@NullMarked
package org.arcsay.evaluate;

import org.jspecify.annotations.NullMarked;
