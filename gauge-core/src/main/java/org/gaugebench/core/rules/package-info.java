/**
 * When may the count be corrected. A rule looks at one minute's figures and answers with one word
 * ({@link org.gaugebench.core.rules.RuleOutcome}) and a reason; it applies nothing itself.
 */
package org.gaugebench.core.rules;
