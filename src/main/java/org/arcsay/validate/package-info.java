/** Named rules that judge entries and return findings as data; a rule never changes an entry. */
@NullMarked
package org.arcsay.validate;

import org.jspecify.annotations.NullMarked;
