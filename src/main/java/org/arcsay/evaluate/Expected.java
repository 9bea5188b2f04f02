package org.arcsay.evaluate;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;

/**
 * One recording and what should come of it.
 *
 * @param wav the recording
 * @param words what is said in it
 * @param reading the expected fields, or null fields where the recording holds no reading
 * @param groups values of the columns by which results are grouped, such as voice, noise and distance
 */
record Expected(Path wav, List<String> words, Fields reading, Map<String, String> groups) {

    /**
     * A reading as the flat fields of the list of recordings; "-" stands for what was not said.
     *
     * @param mode "active", "passive" or "-"
     * @param joint "IP", "MP", "CMC" or "tip gap"; "-" for a recording without a reading
     * @param motion the motion, the kind of extension, or the finger of a gap
     * @param value the number
     * @param unit "deg", "mm", "cm", "in" or "-"
     */
    record Fields(String mode, String joint, String motion, String value, String unit) {
        static final Fields NONE = new Fields("-", "-", "-", "-", "-");

        boolean isReading() {
            return !joint.equals("-");
        }
    }
}
