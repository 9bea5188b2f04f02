/** Words to commands. What is not understood is rejected with its reason, never guessed. */
@NullMarked
package org.arcsay.parser;

import org.jspecify.annotations.NullMarked;
