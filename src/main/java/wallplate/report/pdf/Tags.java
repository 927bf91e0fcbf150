package wallplate.report.pdf;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Map;
import java.util.TreeMap;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.common.PDNumberTreeNode;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDMarkInfo;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDParentTreeValue;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureElement;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureNode;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureTreeRoot;
import org.apache.pdfbox.pdmodel.documentinterchange.taggedpdf.StandardStructureTypes;

/**
 * What the contents of a document are, for screen readers: headings, paragraphs, tables and pictures with their texts.
 *
 * <p>ISO 32000-1, 14.7 and 14.8: each leaf of the structure names a marked piece of a page by its number, and the tree
 * of parents leads back from the piece to its leaf.
 */
final class Tags {

    private final PDStructureTreeRoot root = new PDStructureTreeRoot();
    private final Deque<PDStructureNode> open = new ArrayDeque<>();
    private final Map<Integer, PDParentTreeValue> parents = new TreeMap<>();

    Tags(PDDocument document) {
        PDMarkInfo info = new PDMarkInfo();
        info.setMarked(true);
        document.getDocumentCatalog().setMarkInfo(info);
        document.getDocumentCatalog().setStructureTreeRoot(root);
        PDStructureElement whole = new PDStructureElement(StandardStructureTypes.DOCUMENT, root);
        root.appendKid(whole);
        open.push(whole);
    }

    /** A page whose pieces are numbered from nought. */
    final class OfPage {

        private final PDPage page;
        private final COSArray leaves = new COSArray();

        private OfPage(PDPage page) {
            this.page = page;
        }

        /** Adds a leaf and returns the number of the piece that it stands for. */
        int leaf(String role, String text) {
            PDStructureElement leaf = element(role);
            leaf.setPage(page);
            if (!text.isEmpty()) {
                leaf.setAlternateDescription(text);
            }
            int number = leaves.size();
            leaf.appendKid(number);
            leaves.add(leaf.getCOSObject());
            return number;
        }

        /** What is added until {@link #end()} belongs to an element of its own. */
        void begin(String role) {
            open.push(element(role));
        }

        void end() {
            open.pop();
        }
    }

    private PDStructureElement element(String role) {
        PDStructureElement element = new PDStructureElement(role, open.element());
        open.element().appendKid(element);
        return element;
    }

    OfPage page(PDPage page) {
        OfPage tags = new OfPage(page);
        int number = parents.size();
        page.setStructParents(number);
        parents.put(number, new PDParentTreeValue(tags.leaves));
        return tags;
    }

    /** Writes the tree of parents; nothing may be added afterwards. */
    void finish() {
        PDNumberTreeNode tree = new PDNumberTreeNode(PDParentTreeValue.class);
        tree.setNumbers(parents);
        root.setParentTree(tree);
        root.setParentTreeNextKey(parents.size());
    }
}
