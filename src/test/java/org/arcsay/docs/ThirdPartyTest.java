package org.arcsay.docs;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.Node;
import org.w3c.dom.NodeList;

/** The page of third-party parts against the POM and against the class path that Maven made of it. */
class ThirdPartyTest {
    private static final Pattern ROW = Pattern.compile(
            "\\| `([^`:]+:[^`:]+)` \\| ([^ |]+) \\| ([^|]+) \\| ([^|]+) \\| ([^|]+) \\|", Pattern.MULTILINE);
    private static final List<String> PARTS = List.of("dependency", "plugin", "path");

    private static final Map<String, String> LISTED = new TreeMap<>();
    private static final Map<String, String> DECLARED = new TreeMap<>();

    @BeforeAll
    static void read() throws Exception {
        Matcher row = ROW.matcher(Files.readString(Path.of("docs", "third-party.md")));
        while (row.find()) {
            LISTED.put(row.group(1), row.group(2));
        }
        Document pom = DocumentBuilderFactory.newInstance()
                .newDocumentBuilder()
                .parse(Path.of("pom.xml").toFile());
        Map<String, String> properties = properties(pom);
        for (String part : PARTS) {
            for (Element element : elements(pom, part)) {
                declare(element, properties);
            }
        }
        // Its version comes from the imported bill of materials.
        DECLARED.remove("org.junit:junit-bom");
        DECLARED.put("org.junit.jupiter:junit-jupiter", properties.get("junit.version"));
    }

    @Test
    void everythingDeclaredIsListedWithItsVersion() {
        Map<String, String> listed = new TreeMap<>(LISTED);
        listed.keySet().retainAll(DECLARED.keySet());
        assertTrue(DECLARED.size() > 30, "declared: " + DECLARED.size());
        assertEquals(DECLARED, listed);
    }

    @Test
    void whatComesWithSomethingElseIsOnTheClassPathInThatVersion() {
        String classPath = System.getProperty("java.class.path");
        List<String> gone = LISTED.entrySet().stream()
                .filter(part -> !DECLARED.containsKey(part.getKey()))
                .map(part -> part.getKey().substring(part.getKey().indexOf(':') + 1) + "-" + part.getValue())
                .filter(jar -> !classPath.contains(jar))
                .toList();
        assertEquals(List.of(), gone);
    }

    private static void declare(Element part, Map<String, String> properties) {
        String version = child(part, "version").orElse("managed");
        if (version.startsWith("${")) {
            version = properties.get(version.substring(2, version.length() - 1));
        }
        DECLARED.put(
                child(part, "groupId").orElseThrow() + ":"
                        + child(part, "artifactId").orElseThrow(),
                version);
    }

    private static Map<String, String> properties(Document pom) {
        Map<String, String> properties = new HashMap<>();
        for (Element group : elements(pom, "properties")) {
            for (Element property : elements(group.getChildNodes())) {
                properties.put(property.getTagName(), property.getTextContent().strip());
            }
        }
        return properties;
    }

    private static Optional<String> child(Element parent, String name) {
        return elements(parent.getChildNodes()).stream()
                .filter(child -> child.getTagName().equals(name))
                .map(child -> child.getTextContent().strip())
                .findFirst();
    }

    private static List<Element> elements(Document pom, String name) {
        return elements(pom.getElementsByTagName(name));
    }

    private static List<Element> elements(NodeList nodes) {
        List<Element> elements = new ArrayList<>();
        for (int i = 0; i < nodes.getLength(); i++) {
            if (nodes.item(i).getNodeType() == Node.ELEMENT_NODE) {
                elements.add((Element) nodes.item(i));
            }
        }
        return elements;
    }
}
