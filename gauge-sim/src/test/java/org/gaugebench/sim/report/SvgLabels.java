package org.gaugebench.sim.report;

import java.io.StringReader;
import java.util.ArrayList;
import java.util.List;
import javax.xml.parsers.DocumentBuilder;
import javax.xml.parsers.DocumentBuilderFactory;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;

/** Reads a picture as any program that knows XML does, and finds where its words stand. */
public final class SvgLabels {
    private SvgLabels() {}

    private record Box(String text, int left, int top, int right, int bottom) {
        boolean meets(Box other) {
            return left < other.right
                    && other.left < right
                    && top < other.bottom
                    && other.top < bottom;
        }
    }

    /** Parses the text; broken XML is an assertion error. */
    public static Document parse(String svg) {
        try {
            DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
            factory.setFeature("http://apache.org/xml/features/disallow-doctype-decl", true);
            DocumentBuilder builder = factory.newDocumentBuilder();
            return builder.parse(new InputSource(new StringReader(svg)));
        } catch (Exception e) {
            throw new AssertionError("no well-formed XML: " + e.getMessage(), e);
        }
    }

    /** The elements of a name, in order. */
    static List<Element> elements(Document document, String name) {
        NodeList nodes = document.getElementsByTagName(name);
        List<Element> elements = new ArrayList<>();
        for (int i = 0; i < nodes.getLength(); i++) {
            elements.add((Element) nodes.item(i));
        }
        return elements;
    }

    /** What is wrong with the places of words: on each other, or over the edge of the sheet. */
    public static List<String> troubles(String svg) {
        Document document = parse(svg);
        String[] sheet = document.getDocumentElement().getAttribute("viewBox").split(" ", -1);
        Box paper = new Box("", 0, 0, Integer.parseInt(sheet[2]), Integer.parseInt(sheet[3]));
        List<Box> boxes = elements(document, "text").stream().map(SvgLabels::box).toList();
        List<String> troubles = new ArrayList<>();
        for (int i = 0; i < boxes.size(); i++) {
            Box box = boxes.get(i);
            if (box.left < 0
                    || box.top < 0
                    || box.right > paper.right
                    || box.bottom > paper.bottom) {
                troubles.add(box + " leaves the sheet");
            }
            for (Box other : boxes.subList(i + 1, boxes.size())) {
                if (box.meets(other)) {
                    troubles.add(box + " and " + other);
                }
            }
        }
        return troubles;
    }

    /** Capitals and figures are about three quarters of the size high, tails a fifth below. */
    private static Box box(Element text) {
        int size = Integer.parseInt(text.getAttribute("font-size"));
        int x = Integer.parseInt(text.getAttribute("x"));
        int y = Integer.parseInt(text.getAttribute("y"));
        int width = PictureType.width(text.getTextContent(), size);
        int left =
                switch (text.getAttribute("text-anchor")) {
                    case "middle" -> x - width / 2;
                    case "end" -> x - width;
                    default -> x;
                };
        return new Box(text.getTextContent(), left, y - size * 3 / 4, left + width, y + size / 5);
    }
}
