package org.gaugebench.sim.browser;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;

/** A text beside the tests, such as a script that runs in the page. */
final class TestResource {
    private TestResource() {}

    static String text(String name) {
        try (InputStream in = TestResource.class.getResourceAsStream(name)) {
            if (in == null) {
                throw new IllegalStateException("no resource " + name);
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
