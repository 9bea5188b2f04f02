package org.arcsay.review;

import java.util.List;
import org.arcsay.model.Finding;
import org.arcsay.model.Reading;
import org.arcsay.model.Visit;

/** Whoever says what is unusual about a reading; it judges and never changes anything. */
@FunctionalInterface
public interface Judge {
    /**
     * @param reading the reading as it would be stored
     * @param others the visit without the entry that the reading would replace
     * @return what is unusual, empty when nothing is
     */
    List<Finding> judge(Reading reading, Visit others);
}
