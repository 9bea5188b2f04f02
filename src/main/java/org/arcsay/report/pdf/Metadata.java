package org.arcsay.report.pdf;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Calendar;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentCatalog;
import org.apache.pdfbox.pdmodel.PDDocumentInformation;
import org.apache.pdfbox.pdmodel.common.PDMetadata;
import org.apache.pdfbox.pdmodel.interactive.viewerpreferences.PDViewerPreferences;

/**
 * What a document says of itself.
 *
 * @param title shown by the viewer in place of the name of the file
 * @param program that made it
 * @param made when
 */
record Metadata(String title, String program, Calendar made) {
    /** An XMP packet (ISO 16684-1) with the title, and the claim that the document follows ISO 14289-1, PDF/UA-1. */
    private static final String PACKET = """
            <?xpacket begin="\uFEFF" id="W5M0MpCehiHzreSzNTczkc9d"?>
            <x:xmpmeta xmlns:x="adobe:ns:meta/">
            <rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">
            <rdf:Description rdf:about="" xmlns:dc="http://purl.org/dc/elements/1.1/"
             xmlns:pdfuaid="http://www.aiim.org/pdfua/ns/id/">
            <dc:title><rdf:Alt><rdf:li xml:lang="x-default">%s</rdf:li></rdf:Alt></dc:title>
            <pdfuaid:part>1</pdfuaid:part>
            </rdf:Description>
            </rdf:RDF>
            </x:xmpmeta>
            <?xpacket end="r"?>
            """;

    void into(PDDocument document) throws IOException {
        PDDocumentInformation information = document.getDocumentInformation();
        information.setTitle(title);
        information.setCreator(program);
        information.setProducer(program);
        information.setCreationDate(made);
        information.setModificationDate(made);
        PDDocumentCatalog catalog = document.getDocumentCatalog();
        catalog.setLanguage("en");
        PDViewerPreferences preferences = new PDViewerPreferences(new COSDictionary());
        preferences.setDisplayDocTitle(true);
        catalog.setViewerPreferences(preferences);
        byte[] packet = PACKET.formatted(escaped()).getBytes(StandardCharsets.UTF_8);
        catalog.setMetadata(new PDMetadata(document, new ByteArrayInputStream(packet)));
    }

    private String escaped() {
        return title.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;");
    }
}
