/** JavaFX views. The only package that uses javafx. */
@NullMarked
package org.arcsay.ui;

import org.jspecify.annotations.NullMarked;
