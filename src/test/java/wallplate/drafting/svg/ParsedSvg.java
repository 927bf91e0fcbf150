package wallplate.drafting.svg;

import java.io.StringReader;
import java.util.ArrayList;
import java.util.List;
import javax.xml.parsers.DocumentBuilderFactory;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;

/** An SVG text as the JDK's XML parser sees it. */
public final class ParsedSvg {

    private final Document document;

    private ParsedSvg(Document document) {
        this.document = document;
    }

    public static ParsedSvg of(String svg) {
        try {
            DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
            factory.setNamespaceAware(true);
            return new ParsedSvg(factory.newDocumentBuilder().parse(new InputSource(new StringReader(svg))));
        } catch (Exception broken) {
            throw new AssertionError("not well-formed XML: " + svg, broken);
        }
    }

    public Element root() {
        return document.getDocumentElement();
    }

    public List<Element> all(String name) {
        NodeList nodes = document.getElementsByTagName(name);
        List<Element> elements = new ArrayList<>();
        for (int index = 0; index < nodes.getLength(); index++) {
            elements.add((Element) nodes.item(index));
        }
        return elements;
    }

    public List<Element> groups(String classWord) {
        return all("g").stream()
                .filter(group -> List.of(group.getAttribute("class").split(" ")).contains(classWord))
                .toList();
    }
}
