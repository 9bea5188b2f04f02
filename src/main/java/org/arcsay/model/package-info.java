/** The words of the trade as types: sides, sites, motions, values, readings, entries and visits. Depends on nothing. */
@NullMarked
package org.arcsay.model;

import org.jspecify.annotations.NullMarked;
