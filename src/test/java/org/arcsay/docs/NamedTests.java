package org.arcsay.docs;

import java.lang.reflect.Method;
import java.util.Arrays;
import java.util.regex.Pattern;
import org.junit.platform.commons.annotation.Testable;
import org.junit.platform.commons.support.AnnotationSupport;

/** Tests that pages name, such as `validate/RulesTest#scoresJumpToo`. */
final class NamedTests {
    static final Pattern PATTERN = Pattern.compile("`([a-z/]+/[A-Z][A-Za-z]+)#([A-Za-z0-9]+)`");

    private NamedTests() {}

    /**
     * @param type package and class below org.arcsay
     * @param name the method, in the class or in one nested in it
     */
    static boolean exists(String type, String name) {
        try {
            return has(
                    Class.forName("org.arcsay." + type.replace('/', '.'), false, NamedTests.class.getClassLoader()),
                    name);
        } catch (ClassNotFoundException e) {
            return false;
        }
    }

    private static boolean has(Class<?> type, String name) {
        return Arrays.stream(type.getDeclaredMethods()).anyMatch(method -> isTest(method, name))
                || Arrays.stream(type.getDeclaredClasses()).anyMatch(nested -> has(nested, name));
    }

    private static boolean isTest(Method method, String name) {
        return method.getName().equals(name) && AnnotationSupport.isAnnotated(method, Testable.class);
    }
}
