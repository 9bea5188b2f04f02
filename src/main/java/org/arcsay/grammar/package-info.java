/** The spoken grammar: reader, rule tree, matcher, word graph and spoken numbers. */
@NullMarked
package org.arcsay.grammar;

import org.jspecify.annotations.NullMarked;
