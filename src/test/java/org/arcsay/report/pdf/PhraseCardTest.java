package org.arcsay.report.pdf;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.arcsay.grammar.SpokenGrammar;
import org.arcsay.model.HelpCard;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Read back with PDFBox's own text extraction. */
class PhraseCardTest {
    private static final HelpCard CARD = SpokenGrammar.standard().helpCard();

    private static byte[] written(Paper paper) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        new PhraseCard(paper, "Arcsay test").write(CARD, bytes);
        return bytes.toByteArray();
    }

    @ParameterizedTest
    @EnumSource(Paper.class)
    void everyPhraseOfTheGrammarStandsOnTheCard(Paper paper) throws IOException {
        byte[] pdf = written(paper);
        assertArrayEquals(pdf, written(paper), "the same card, the same bytes");
        try (PDDocument document = Loader.loadPDF(pdf)) {
            String text = new PDFTextStripper().getText(document).replaceAll("\\s+", " ");
            for (HelpCard.Section section : CARD.sections()) {
                assertTrue(text.contains(section.heading()), section.heading());
                section.examples().forEach(example -> assertTrue(text.contains(example), example));
            }
            assertEquals(document.getNumberOfPages(), PagePictures.of(pdf).size());
        }
    }
}
