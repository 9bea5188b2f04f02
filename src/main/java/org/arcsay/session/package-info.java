/** The state of a visit being captured: commands to journal events, context, questions and undo. */
@NullMarked
package org.arcsay.session;

import org.jspecify.annotations.NullMarked;
