/** Sound in: microphone and WAV files as a stream of 16-bit mono frames, with level and clipping. */
@NullMarked
package org.arcsay.audio;

import org.jspecify.annotations.NullMarked;
