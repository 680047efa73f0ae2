package org.gaugebench.house;

/**
 * One broken rule.
 *
 * @param place class and method, or file and line
 * @param what what stands there against the rule
 */
public record Finding(String place, String what) {
    @Override
    public String toString() {
        return place + ": " + what;
    }
}
