package org.arcsay.report.pdf;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureElement;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureNode;
import org.arcsay.grammar.SpokenGrammar;
import org.arcsay.model.Motion;
import org.arcsay.model.Side;
import org.arcsay.report.content.DemoCase;
import org.arcsay.report.content.FullSeries;
import org.arcsay.report.content.Report;
import org.arcsay.report.content.VisitScript;
import org.arcsay.report.content.Written;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.verapdf.gf.foundry.VeraGreenfieldFoundryProvider;
import org.verapdf.pdfa.Foundries;
import org.verapdf.pdfa.PDFAParser;
import org.verapdf.pdfa.PDFAValidator;
import org.verapdf.pdfa.flavours.PDFAFlavour;
import org.verapdf.pdfa.results.TestAssertion;
import org.verapdf.pdfa.results.ValidationResult;

/**
 * The PDF can be read by a screen reader. Checked from outside: the machine-checkable conditions of PDF/UA-1 (ISO 14289-1:2014), by
 * the validator of the PDF Association's veraPDF consortium.
 */
class TaggedPdfTest {
    @BeforeAll
    static void useTheValidator() {
        VeraGreenfieldFoundryProvider.initialise();
    }

    private static byte[] pdf(Paper paper, Report report) throws IOException {
        return Written.bytes(new PdfWriter(paper), report);
    }

    private static List<String> broken(byte[] pdf) throws Exception {
        try (PDFAParser parser =
                        Foundries.defaultInstance().createParser(new ByteArrayInputStream(pdf), PDFAFlavour.PDFUA_1);
                PDFAValidator validator = Foundries.defaultInstance().createValidator(PDFAFlavour.PDFUA_1, false)) {
            ValidationResult result = validator.validate(parser);
            assertTrue(result.getTotalAssertions() > 500, "only " + result.getTotalAssertions() + " conditions seen");
            return result.getTestAssertions().stream()
                    .filter(assertion -> assertion.getStatus() == TestAssertion.Status.FAILED)
                    .map(assertion -> assertion.getRuleId().getClause() + ": " + assertion.getMessage())
                    .distinct()
                    .toList();
        }
    }

    @ParameterizedTest
    @EnumSource(Paper.class)
    void reportsFollowTheStandard(Paper paper) throws Exception {
        assertEquals(List.of(), broken(pdf(paper, DemoCase.report())));
        assertEquals(List.of(), broken(pdf(paper, Report.of(DemoCase.source(FullSeries.visits(5))))));
    }

    @Test
    void aReportOverSeveralPagesAndAnEmptyOneFollowTheStandard() throws Exception {
        VisitScript many = new VisitScript(1, "demo-08", "2026-04-01T08:00:00+02:00").hand(Side.RIGHT);
        for (int repeat = 0; repeat < 110; repeat++) {
            many.angle(repeat % 2 == 0 ? "IP" : "MP", Motion.FLEXION, 30 + repeat / 2);
        }
        VisitScript none = new VisitScript(1, "demo-09", "2026-04-01T08:00:00+02:00");
        for (VisitScript script : List.of(many, none)) {
            assertEquals(List.of(), broken(pdf(Paper.A4, Report.of(DemoCase.source(List.of(script.record()))))));
        }
    }

    @Test
    void theCardOfPhrasesFollowsTheStandard() throws Exception {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        new PhraseCard(Paper.A4, "Arcsay").write(SpokenGrammar.standard().helpCard(), out);
        assertEquals(List.of(), broken(out.toByteArray()));
    }

    @Test
    void theValidatorSeesWhatIsMissing() throws Exception {
        try (PDDocument document = Loader.loadPDF(pdf(Paper.A4, DemoCase.report()))) {
            document.getDocumentCatalog().setStructureTreeRoot(null);
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            document.save(out);
            assertFalse(broken(out.toByteArray()).isEmpty());
        }
    }

    @Test
    void eachHandIsAHeadingATableAndFiguresInTheOrderOfThePage() throws Exception {
        try (PDDocument document = Loader.loadPDF(pdf(Paper.A4, DemoCase.report()))) {
            List<PDStructureElement> elements =
                    all(document.getDocumentCatalog().getStructureTreeRoot());
            List<String> types =
                    elements.stream().map(PDStructureElement::getStructureType).toList();
            assertEquals(2, types.stream().filter("H1"::equals).count());
            assertEquals(2, types.stream().filter("Table"::equals).count());
            assertTrue(
                    types.indexOf("H1") < types.indexOf("Table") && types.indexOf("Table") < types.indexOf("Figure"));
            assertTrue(
                    elements.stream()
                            .filter(element -> element.getStructureType().equals("Figure"))
                            .map(PDStructureElement::getAlternateDescription)
                            .anyMatch(words -> words.contains("IP") && words.contains("58")),
                    "a figure says in words what it shows");
            assertTrue(
                    elements.stream().anyMatch(element -> String.valueOf(element.getActualText())
                            .endsWith(", beyond measurement error")),
                    "the mark of a change is told in words");
        }
    }

    private static List<PDStructureElement> all(PDStructureNode node) {
        List<PDStructureElement> found = new ArrayList<>();
        for (Object kid : node.getKids()) {
            if (kid instanceof PDStructureElement element) {
                found.add(element);
                found.addAll(all(element));
            }
        }
        return found;
    }
}
