package org.gaugebench.sim.explain;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Works a printed calculation out again, knowing nothing but what the page says of its signs. It
 * shares no code with the program.
 */
final class ByHand {
    private static final Pattern TOKEN = Pattern.compile("\\s*(\\d+|[a-z]+|>>|>=|<=|[-+/^(),<>])");

    private final List<String> tokens = new ArrayList<>();
    private int next;

    private ByHand(String text) {
        Matcher matcher = TOKEN.matcher(text);
        int end = 0;
        while (end < text.strip().length() && matcher.find(end) && matcher.start() == end) {
            tokens.add(matcher.group(1));
            end = matcher.end();
        }
        if (end < text.stripTrailing().length()) {
            throw new IllegalArgumentException("no calculation: " + text);
        }
    }

    /** The figure, or "yes" and "no" for a comparison. */
    static String of(String text) {
        ByHand hand = new ByHand(text);
        BigInteger left = hand.shift();
        String answer = left.toString();
        if (hand.next < hand.tokens.size()) {
            String sign = hand.take();
            int order = left.compareTo(hand.shift());
            boolean yes =
                    (sign.equals(">=") && order >= 0)
                            || (sign.equals("<=") && order <= 0)
                            || (sign.equals("<") && order < 0)
                            || (sign.equals(">") && order > 0);
            answer = yes ? "yes" : "no";
        }
        if (hand.next < hand.tokens.size()) {
            throw new IllegalArgumentException("left over in " + text);
        }
        return answer;
    }

    private String peek() {
        return next < tokens.size() ? tokens.get(next) : "";
    }

    private String take() {
        return tokens.get(next++);
    }

    private BigInteger shift() {
        BigInteger value = sum();
        while (peek().equals(">>")) {
            take();
            BigInteger by = BigInteger.TWO.pow(sum().intValueExact());
            BigInteger[] parts = value.divideAndRemainder(by);
            value = parts[1].signum() < 0 ? parts[0].subtract(BigInteger.ONE) : parts[0];
        }
        return value;
    }

    private BigInteger sum() {
        BigInteger value = product();
        while (peek().equals("+") || peek().equals("-")) {
            boolean plus = take().equals("+");
            BigInteger other = product();
            value = plus ? value.add(other) : value.subtract(other);
        }
        return value;
    }

    private BigInteger product() {
        BigInteger value = power();
        while (peek().equals("x") || peek().equals("/") || peek().equals("mod")) {
            String sign = take();
            BigInteger other = power();
            value =
                    switch (sign) {
                        case "x" -> value.multiply(other);
                        case "/" -> value.divide(other);
                        default -> value.remainder(other);
                    };
        }
        return value;
    }

    private BigInteger power() {
        BigInteger value = atom();
        if (peek().equals("^")) {
            take();
            return value.pow(atom().intValueExact());
        }
        return value;
    }

    private BigInteger atom() {
        String token = take();
        if (token.equals("-")) {
            return atom().negate();
        }
        if (token.equals("(")) {
            BigInteger value = shift();
            expect(")");
            return value;
        }
        return Character.isDigit(token.charAt(0)) ? new BigInteger(token) : function(token);
    }

    private void expect(String token) {
        if (!take().equals(token)) {
            throw new IllegalArgumentException("no " + token + " in " + tokens);
        }
    }

    private BigInteger function(String name) {
        expect("(");
        if (name.equals("half") || name.equals("up")) {
            return rounded(name);
        }
        BigInteger first = shift();
        if (name.equals("min") || name.equals("max")) {
            expect(",");
            BigInteger second = shift();
            expect(")");
            return name.equals("min") == first.compareTo(second) < 0 ? first : second;
        }
        expect(")");
        if (name.equals("abs")) {
            return first.signum() < 0 ? first.negate() : first;
        }
        if (!name.equals("root")) {
            throw new IllegalArgumentException("what is " + name + "?");
        }
        return rootUp(first);
    }

    /** A quotient inside half() or up(): the last division is the one that is rounded. */
    private BigInteger rounded(String name) {
        BigInteger value = power();
        BigInteger divisor = BigInteger.ONE;
        while (!peek().equals(")")) {
            String sign = take();
            BigInteger other = power();
            if (sign.equals("x")) {
                value = value.multiply(other);
            } else {
                divisor = other;
            }
        }
        expect(")");
        BigInteger quotient = value.abs().divide(divisor);
        BigInteger twice =
                value.abs().subtract(quotient.multiply(divisor)).multiply(BigInteger.TWO);
        boolean more = name.equals("up") ? twice.signum() > 0 : twice.compareTo(divisor) >= 0;
        BigInteger magnitude = more ? quotient.add(BigInteger.ONE) : quotient;
        return value.signum() < 0 ? magnitude.negate() : magnitude;
    }

    /** One step at a time from a guess that is near enough. */
    private static BigInteger rootUp(BigInteger value) {
        BigInteger root = BigInteger.valueOf((long) Math.sqrt(value.doubleValue()));
        while (root.multiply(root).compareTo(value) < 0) {
            root = root.add(BigInteger.ONE);
        }
        while (root.signum() > 0 && root.subtract(BigInteger.ONE).pow(2).compareTo(value) >= 0) {
            root = root.subtract(BigInteger.ONE);
        }
        return root;
    }
}
