package org.arcsay.report.content;

import java.util.List;

/** Lists of words that stay readable when they are long. */
final class Shortened {
    private static final int MOST = 6;

    private Shortened() {}

    /** All items, or the first and the last five with the number of those between. */
    static String join(List<String> items) {
        if (items.size() <= MOST) {
            return String.join("; ", items);
        }
        List<String> last = items.subList(items.size() - MOST + 1, items.size());
        return items.get(0) + "; " + (items.size() - MOST) + " more; " + String.join("; ", last);
    }
}
