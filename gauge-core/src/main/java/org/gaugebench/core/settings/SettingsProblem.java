package org.gaugebench.core.settings;

/**
 * One thing wrong with a set of settings.
 *
 * @param setting the setting to change
 * @param value its value
 * @param rule the rule that is broken, for people, with the limit in it
 */
public record SettingsProblem(Setting setting, long value, String rule) {
    @Override
    public String toString() {
        return setting.key() + ": " + rule + ": " + value + " " + setting.unit();
    }
}
