package org.gaugebench.sim.explain;

import java.math.BigInteger;

/**
 * A calculation in whole numbers, as it is written and what comes out. Text and value are built
 * together, so neither can say what the other does not.
 *
 * <p>Written so that anybody can do it again: {@code x} multiplies, {@code /} divides and cuts off
 * toward zero, {@code >>} n divides by 2^n and rounds down, {@code mod} is the remainder, {@code
 * half(a / b)} rounds to the nearest, halves away from zero, {@code up(a / b)} rounds up, {@code
 * root(a)} is the square root, rounded up.
 */
final class Expression {
    private static final int ATOM = 0;
    private static final int POWER = 1;
    private static final int PRODUCT = 2;
    private static final int SUM = 3;
    private static final int SHIFT = 4;

    private final String text;
    private final BigInteger value;
    private final int level;

    private Expression(String text, BigInteger value, int level) {
        this.text = text;
        this.value = value;
        this.level = level;
    }

    static Expression of(long value) {
        return of(BigInteger.valueOf(value));
    }

    static Expression of(BigInteger value) {
        return new Expression(value.toString(), value, ATOM);
    }

    static Expression twoTo(int exponent) {
        return new Expression("2^" + exponent, BigInteger.ONE.shiftLeft(exponent), POWER);
    }

    String text() {
        return text;
    }

    BigInteger value() {
        return value;
    }

    /** The value where it is known to fit. */
    long whole() {
        return value.longValueExact();
    }

    private Expression joined(String sign, int at, Expression other, BigInteger result) {
        String left = level > at ? "(" + text + ")" : text;
        boolean apart = other.level >= at || other.text.startsWith("-");
        String right = apart ? "(" + other.text + ")" : other.text;
        return new Expression(left + " " + sign + " " + right, result, at);
    }

    Expression plus(Expression other) {
        return joined("+", SUM, other, value.add(other.value));
    }

    Expression plus(long other) {
        return plus(of(other));
    }

    Expression minus(Expression other) {
        return joined("-", SUM, other, value.subtract(other.value));
    }

    Expression minus(long other) {
        return minus(of(other));
    }

    Expression times(Expression other) {
        return joined("x", PRODUCT, other, value.multiply(other.value));
    }

    Expression times(long other) {
        return times(of(other));
    }

    /** Cut off toward zero. */
    Expression over(Expression other) {
        return joined("/", PRODUCT, other, value.divide(other.value));
    }

    Expression over(long other) {
        return over(of(other));
    }

    /** Of a value that is not negative. */
    Expression mod(long other) {
        return joined("mod", PRODUCT, of(other), value.mod(BigInteger.valueOf(other)));
    }

    /** Rounded down. */
    Expression right(int bits) {
        String left = level == ATOM && !text.startsWith("-") ? text : "(" + text + ")";
        return new Expression(left + " >> " + bits, value.shiftRight(bits), SHIFT);
    }

    /** To the nearest, halves away from zero. */
    Expression half(Expression divisor) {
        BigInteger twice = value.abs().shiftLeft(1).add(divisor.value);
        BigInteger magnitude = twice.divide(divisor.value.shiftLeft(1));
        return function("half", "/", divisor, value.signum() < 0 ? magnitude.negate() : magnitude);
    }

    Expression half(long divisor) {
        return half(of(divisor));
    }

    /** Rounded up. */
    Expression up(long divisor) {
        BigInteger by = BigInteger.valueOf(divisor);
        BigInteger[] parts = value.divideAndRemainder(by);
        BigInteger result = parts[1].signum() > 0 ? parts[0].add(BigInteger.ONE) : parts[0];
        return function("up", "/", of(divisor), result);
    }

    private Expression function(String name, String sign, Expression other, BigInteger result) {
        String inside = joined(sign, PRODUCT, other, result).text;
        return new Expression(name + "(" + inside + ")", result, ATOM);
    }

    /** The square root, rounded up. */
    Expression root() {
        BigInteger floor = value.sqrt();
        BigInteger result = floor.multiply(floor).equals(value) ? floor : floor.add(BigInteger.ONE);
        return new Expression("root(" + text + ")", result, ATOM);
    }

    Expression abs() {
        return new Expression("abs(" + text + ")", value.abs(), ATOM);
    }

    Expression min(Expression other) {
        return pair("min", other, value.min(other.value));
    }

    Expression min(long other) {
        return min(of(other));
    }

    Expression max(Expression other) {
        return pair("max", other, value.max(other.value));
    }

    Expression max(long other) {
        return max(of(other));
    }

    private Expression pair(String name, Expression other, BigInteger result) {
        return new Expression(name + "(" + text + ", " + other.text + ")", result, ATOM);
    }

    /** The negative: 0 less this. */
    Expression negative() {
        return of(0).minus(this);
    }
}
