/** Answers by sound: earcons and spoken read-back. */
@NullMarked
package org.arcsay.feedback;

import org.jspecify.annotations.NullMarked;
