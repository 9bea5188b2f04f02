/** Words from sound. The only package that touches native code. */
@NullMarked
package org.arcsay.recogniser;

import org.jspecify.annotations.NullMarked;
