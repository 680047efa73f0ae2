package org.gaugebench.sim.live;

import com.sun.net.httpserver.Headers;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.SecureRandom;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * Lets in what comes from the page itself. The page listens on this machine alone; but a page of
 * somebody else in the same browser could reach it, under a name of its own that leads here (hence
 * the host), or blindly (hence the origin and the token, which no other page can read).
 */
final class Gate {
    /** Header that carries the token. */
    static final String TOKEN_HEADER = "X-Bench-Token";

    /** Most bytes of a message: an act has a dozen words. */
    static final int LARGEST_MESSAGE = 4_096;

    private static final int TOKEN_BYTES = 24;

    private final String token;
    private final Set<String> hosts;

    /**
     * A gate with a token of its own.
     *
     * @param port on which the page is
     */
    Gate(int port) {
        byte[] bytes = new byte[TOKEN_BYTES];
        new SecureRandom().nextBytes(bytes);
        token = HexFormat.of().formatHex(bytes);
        hosts = Set.of("127.0.0.1:" + port, "localhost:" + port, "[::1]:" + port);
    }

    /** What the page has to send with every act; another one at each start. */
    String token() {
        return token;
    }

    /**
     * Checks where a request comes from.
     *
     * @throws Refusal if it is not from our page
     */
    void checkSource(Headers headers) throws Refusal {
        String host = only(headers, "Host");
        if (host == null || !hosts.contains(host)) {
            throw new Refusal(
                    421, "this page answers to its own address only, such as 127.0.0.1; ask there");
        }
        String origin = only(headers, "Origin");
        if (headers.containsKey("Origin")
                && (origin == null
                        || !origin.startsWith("http://")
                        || !hosts.contains(origin.substring("http://".length())))) {
            throw new Refusal(403, "this request comes from another page; open this page itself");
        }
        String site = headers.getFirst("Sec-Fetch-Site");
        if (site != null && !site.equals("same-origin") && !site.equals("none")) {
            String mode = headers.getFirst("Sec-Fetch-Mode");
            if (!"navigate".equals(mode)) {
                throw new Refusal(
                        403, "this request comes from another page; open this page itself");
            }
        }
    }

    /**
     * Checks that an act comes from a page that we served since the start.
     *
     * @throws Refusal if not
     */
    void checkAct(Headers headers) throws Refusal {
        String shown = only(headers, TOKEN_HEADER);
        if (shown == null || !isToken(shown)) {
            throw new Refusal(
                    403,
                    "the header "
                            + TOKEN_HEADER
                            + " is missing or of an earlier start; load the page again");
        }
        String type = headers.getFirst("Content-Type");
        if (type == null || !type.toLowerCase(Locale.ROOT).startsWith("application/json")) {
            throw new Refusal(415, "expected a message with Content-Type: application/json");
        }
    }

    /** Whether it is the token of this start. */
    boolean isToken(String shown) {
        return MessageDigest.isEqual(
                shown.getBytes(StandardCharsets.UTF_8), token.getBytes(StandardCharsets.UTF_8));
    }

    private static @Nullable String only(Headers headers, String name) {
        List<String> values = headers.get(name);
        return values == null || values.size() != 1 ? null : values.get(0);
    }
}
