/**
 * The house rules as code: what class files, sources and folders of both modules may hold. Shared
 * by the {@code HouseRulesTest} of each module through the test jar; judges, and changes nothing.
 */
package org.gaugebench.house;
