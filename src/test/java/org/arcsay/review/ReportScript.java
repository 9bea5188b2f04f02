package org.arcsay.review;

import java.nio.file.Path;
import java.util.Base64;
import java.util.List;

/** A report of one small page. */
final class ReportScript implements VisitReport {
    /** A white pixel as PNG. */
    private static final String PIXEL =
            "iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAIAAACQd1PeAAAADElEQVR4nGP4//8/AAX+Av4N70a4AAAAAElFTkSuQmCC";

    @Override
    public Pages show(long visit) {
        return new Pages(List.of(Base64.getDecoder().decode(PIXEL)), "Visit " + visit, "visit.pdf");
    }

    @Override
    public void save(long visit, Path file) throws HomeException {
        throw new HomeException("The disk is full.", null);
    }
}
