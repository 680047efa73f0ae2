/** Pages in a real browser: a headless Chromium, what it shows, asks for and complains about. */
package org.gaugebench.sim.browser;
