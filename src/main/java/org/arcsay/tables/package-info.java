/** Reading of the tables of facts and limits, and where each number in them comes from. */
@NullMarked
package org.arcsay.tables;

import org.jspecify.annotations.NullMarked;
