package org.arcsay.report.pdf;

import java.util.LinkedHashMap;
import java.util.Map;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentCatalog;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDNumberTreeNode;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDMarkInfo;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDParentTreeValue;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureElement;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureTreeRoot;
import org.apache.pdfbox.pdmodel.documentinterchange.taggedpdf.PDTableAttributeObject;
import org.apache.pdfbox.pdmodel.documentinterchange.taggedpdf.StandardStructureTypes;
import org.jspecify.annotations.Nullable;

/**
 * The structure of one document, by which a screen reader reads it: headings, paragraphs, tables and figures in the order in which
 * they are drawn. For one thread.
 *
 * <p>Meaning of the types: ISO 32000-1, 14.7 and 14.8.
 */
final class Tags {
    private final PDDocument document;
    private final PDStructureTreeRoot root = new PDStructureTreeRoot();
    private final PDStructureElement whole = new PDStructureElement(StandardStructureTypes.DOCUMENT, root);
    private final Map<Integer, PDParentTreeValue> parents = new LinkedHashMap<>();
    private PDStructureElement last = whole;
    private @Nullable PDStructureElement table;

    Tags(PDDocument document) {
        this.document = document;
        root.appendKid(whole);
    }

    /** The tags of a page that was added to the document. */
    PageTags page(PDPage page, PDPageContentStream stream) {
        COSArray ofPage = new COSArray();
        page.setStructParents(parents.size());
        parents.put(parents.size(), new PDParentTreeValue(ofPage));
        return new PageTags(this, page, stream, ofPage);
    }

    /** The next piece of the document. */
    PDStructureElement next(String type) {
        table = null;
        last = child(whole, type);
        return last;
    }

    /** The piece that was begun last, to go on with. */
    PDStructureElement last() {
        return last;
    }

    /** The next row of the table that was begun last; where something else came since, of a new one. */
    PDStructureElement row() {
        if (table == null) {
            table = next(StandardStructureTypes.TABLE);
        }
        return child(table, StandardStructureTypes.TR);
    }

    /**
     * The next cell of a row.
     *
     * @param scope what it is the head of, "Column" or "Row"; empty for none
     * @param columns over how many columns it reaches
     */
    static PDStructureElement cell(PDStructureElement row, String scope, int columns) {
        PDStructureElement cell = child(row, scope.isEmpty() ? StandardStructureTypes.TD : StandardStructureTypes.TH);
        if (!scope.isEmpty() || columns > 1) {
            PDTableAttributeObject attributes = new PDTableAttributeObject();
            if (!scope.isEmpty()) {
                attributes.setScope(scope);
            }
            if (columns > 1) {
                attributes.setColSpan(columns);
            }
            cell.addAttribute(attributes);
        }
        return cell;
    }

    private static PDStructureElement child(PDStructureElement parent, String type) {
        PDStructureElement child = new PDStructureElement(type, parent);
        parent.appendKid(child);
        return child;
    }

    /** Puts the structure into the document, when all of it was drawn. */
    void complete() {
        PDNumberTreeNode tree = new PDNumberTreeNode(PDParentTreeValue.class);
        tree.setNumbers(parents);
        root.setParentTree(tree);
        root.setParentTreeNextKey(parents.size());
        PDMarkInfo marked = new PDMarkInfo();
        marked.setMarked(true);
        PDDocumentCatalog catalog = document.getDocumentCatalog();
        catalog.setStructureTreeRoot(root);
        catalog.setMarkInfo(marked);
    }
}
