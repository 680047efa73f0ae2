/** What is left, in hours: the load filter and the time to empty. Never changes the count. */
package org.gaugebench.core.estimate;
