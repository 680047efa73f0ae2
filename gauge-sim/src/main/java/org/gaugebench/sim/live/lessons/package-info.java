/**
 * Lessons as guided set-ups: what is asked, what the class may predict, what to do on the page, and
 * which figure of the run answers it. Also the sheets and the plans for paper, and the words of all
 * of them, which a file can replace.
 *
 * <p>A page needs no more than {@link org.gaugebench.sim.live.lessons.Lessons#all()}, the {@link
 * org.gaugebench.sim.live.lessons.Lesson} that it gives, {@link
 * org.gaugebench.sim.live.lessons.LessonRun#of} for the answer, {@link
 * org.gaugebench.sim.live.lessons.LessonPages} for the sheets and {@link
 * org.gaugebench.sim.live.lessons.Words} for every text that a class sees. An answer comes from the
 * run and never from a text: no lesson says which of its choices is right.
 *
 * <p>Knows scenarios, the rig and the judge's figures; knows nothing of a page that is served.
 */
@NullMarked
package org.gaugebench.sim.live.lessons;

import org.jspecify.annotations.NullMarked;
