package org.gaugebench.sim.live.lessons;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;

/**
 * Sheets and plans for paper: whole HTML pages that need nothing else, from a server or from a
 * disk, and that print on one sheet of A4 or Letter each.
 */
public final class LessonPages {
    private LessonPages() {}

    /**
     * What a pupil gets: question, room for the prediction and the sketch, the steps.
     *
     * @param lesson which
     * @param words in which language
     * @return an HTML document
     */
    public static String pupilSheet(Lesson lesson, Words words) {
        Html page = head(lesson, words.text("sheet.pupil"), words);
        page.raw("<p class=\"fields\">");
        for (String field : List.of("sheet.name", "sheet.class", "sheet.date")) {
            page.raw("<span>" + Html.safe(words.text(field)) + "</span>");
        }
        page.raw("</p>\n");
        section(page, words.text("sheet.question"), lesson.question(words));
        page.element(
                "p class=\"soft small\"",
                words.text("sheet.knowledge") + ": " + lesson.knowledge(words));
        page.element("h2", words.text("sheet.prediction"));
        page.element("p class=\"ask\"", lesson.ask(words));
        if (lesson.asksForNumber()) {
            page.element("p class=\"soft small\"", words.text("sheet.write-number"));
            page.raw("<p class=\"fields\">");
            page.raw("<span>" + Html.safe(words.text("sheet.my-number")) + "</span>");
            page.raw("<span>" + Html.safe(words.text("sheet.because")) + "</span></p>\n");
        } else {
            page.element("p class=\"soft small\"", words.text("sheet.tick-one"));
            page.raw("<ul class=\"choices\">\n");
            for (Choice choice : lesson.choices()) {
                page.raw("<li><b>" + choice.letter().toUpperCase(Locale.ROOT) + "</b> ");
                page.raw(Html.safe(choice.text(words)) + "</li>\n");
            }
            page.raw("</ul>\n<p class=\"fields\"><span>");
            page.raw(Html.safe(words.text("sheet.because")) + "</span></p>\n");
        }
        page.element("p class=\"small\"", words.text("sheet.sketch"));
        page.raw(
                SketchGrid.of(
                        lesson.sketch(),
                        lesson.scenario().durationMillis(),
                        lesson.sketchAxis(words),
                        words.text("sheet.time"),
                        words));
        page.element("h2", words.text("sheet.steps"));
        steps(page, lesson, words);
        page.raw("<div class=\"write\">");
        page.element("p", words.text("sheet.seen"));
        page.element("p", words.text("sheet.right"));
        page.raw("</div>\n");
        page.element(
                "p class=\"small\"", words.text("sheet.next") + ": " + lesson.next().text(words));
        return page.page(lesson.title(words), "pupil", words);
    }

    /**
     * What the teacher gets: the answer with the run's figures, what stands behind each choice, and
     * the still picture. Runs the lesson's scenario, which takes up to some seconds.
     *
     * @param lesson which
     * @param words in which language
     * @return an HTML document
     */
    public static String answerSheet(Lesson lesson, Words words) {
        return answerSheet(lesson, LessonRun.of(lesson), words);
    }

    /** The same from a run that was made before. */
    public static String answerSheet(Lesson lesson, LessonRun run, Words words) {
        Html page = head(lesson, words.text("answer.sheet"), words);
        page.element("p class=\"ask\"", lesson.ask(words));
        for (Choice right : run.right()) {
            page.raw("<p class=\"right\"><strong>");
            page.raw(Html.safe(words.text("answer.right", label(lesson, right, words))));
            page.raw("</strong><br>" + Html.safe(right.thinks(words)) + "</p>\n");
        }
        if (lesson.asksForNumber()) {
            Figure first = lesson.figures().get(0);
            // To both sides: points else bear the sign of an error.
            String room = first.unit().shown(lesson.tolerance(), 0, words).replace("+", "");
            page.element("p class=\"soft small\"", words.text("answer.tolerance", room));
        }
        section(page, words.text("answer.answer"), lesson.answer(run, words));
        page.element("h2", words.text(lesson.asksForNumber() ? "answer.usual" : "answer.thought"));
        page.raw("<dl>\n");
        for (Choice choice : lesson.choices()) {
            if (!run.right().contains(choice)) {
                page.element("dt", words.text("answer.wrong", label(lesson, choice, words)));
                page.element("dd", choice.thinks(words));
            }
        }
        page.raw("</dl>\n");
        page.element("h2", words.text("answer.picture"));
        lines(page, lesson, words);
        page.raw("<div class=\"frame\">");
        page.picture(lesson.pictureSvg(), lesson.pictureNote(words));
        page.raw("</div>\n");
        page.element("p class=\"small soft\"", words.text("answer.run", lesson.name() + ".yaml"));
        return page.page(lesson.title(words), "answer", words);
    }

    /**
     * The still picture alone, to hand out or to lay under a camera when the page fails: it tells
     * what happened and not which choice was right.
     *
     * @param lesson which
     * @param words in which language
     * @return an HTML document
     */
    public static String pictureSheet(Lesson lesson, Words words) {
        Html page = head(lesson, words.text("picture.sheet"), words);
        page.element("p", lesson.question(words));
        lines(page, lesson, words);
        page.raw("<div class=\"frame\">");
        page.picture(lesson.pictureSvg(), lesson.pictureNote(words));
        page.raw("</div>\n");
        return page.page(lesson.title(words), "picture", words);
    }

    /**
     * A school lesson, minute by minute.
     *
     * @param number from 1 to the number of {@link Lessons#plans()}
     * @param words in which language
     * @return an HTML document
     */
    public static String plan(int number, Words words) {
        Plan plan = Lessons.plans().get(number - 1);
        Html page = new Html();
        page.element("p class=\"kind\"", words.text("plan.sheet", number));
        page.element("h1", plan.text("title", words));
        page.element("p class=\"soft small\"", words.text("plan.lessons", names(plan, words)));
        section(page, words.text("plan.aim"), plan.text("aim", words));
        section(page, words.text("plan.material"), plan.text("material", words));
        section(page, words.text("plan.before"), plan.text("before", words));
        page.raw("<table class=\"ledger\">\n<thead><tr><th scope=\"col\">");
        page.raw(Html.safe(words.text("plan.minutes")) + "</th><th scope=\"col\">");
        page.raw(Html.safe(words.text("plan.what")) + "</th></tr></thead>\n<tbody>\n");
        for (int i = 0; i < plan.rows().size(); i++) {
            Plan.Row row = plan.rows().get(i);
            page.raw("<tr><th scope=\"row\" class=\"minutes\">");
            page.raw(Html.safe(words.text("plan.minute-range", row.fromMinute(), row.toMinute())));
            page.raw("</th><td>");
            if (row.lesson() > 0 && (i == 0 || plan.rows().get(i - 1).lesson() != row.lesson())) {
                String title = Lessons.of(row.lesson()).title(words);
                page.raw("<strong>");
                page.raw(Html.safe(words.text("plan.whose", row.lesson(), title)));
                page.raw("</strong><br>");
            }
            page.raw(Html.safe(plan.text("row." + (i + 1) + ".text", words)) + "</td></tr>\n");
        }
        page.raw("</tbody>\n</table>\n");
        page.element("h2", words.text("plan.when-it-fails"));
        page.raw("<dl>\n");
        for (String part : List.of("no-page", "no-projector")) {
            page.element("dt", words.text("plan." + part));
            page.element("dd", plan.text(part, words));
        }
        page.raw("</dl>\n");
        section(page, words.text("plan.homework"), plan.text("homework", words));
        return page.page(plan.text("title", words), "plan", words);
    }

    /**
     * A page with links to all the others of {@link #files}.
     *
     * @param words in which language
     * @return an HTML document
     */
    public static String index(Words words) {
        Html page = new Html();
        page.element("h1", words.text("index.title"));
        page.element("p", words.text("index.how"));
        page.element("h2", words.text("index.plans"));
        page.raw("<ul>\n");
        for (Plan plan : Lessons.plans()) {
            page.raw("<li>");
            link(page, "plan-" + plan.number(), plan.text("title", words));
            page.raw("</li>\n");
        }
        page.raw("</ul>\n");
        page.element("h2", words.text("index.lessons"));
        page.raw("<ol>\n");
        for (Lesson lesson : Lessons.all()) {
            page.raw("<li>" + Html.safe(lesson.title(words)) + ": ");
            link(page, lesson.name() + "-pupil", words.text("sheet.pupil"));
            page.raw(" · ");
            link(page, lesson.name() + "-answer", words.text("answer.sheet"));
            page.raw(" · ");
            link(page, lesson.name() + "-picture", words.text("picture.sheet"));
            page.raw("</li>\n");
        }
        page.raw("</ol>\n");
        return page.page(words.text("index.title"), "index", words);
    }

    private static void link(Html page, String name, String text) {
        page.raw("<a href=\"" + name + ".html\">" + Html.safe(text) + "</a>");
    }

    /**
     * All sheets and plans, to be written into one folder.
     *
     * @param words in which language
     * @return documents by file name
     */
    public static Map<String, String> files(Words words) {
        Map<String, String> files = new LinkedHashMap<>();
        files.put("index.html", index(words));
        for (Plan plan : Lessons.plans()) {
            files.put("plan-" + plan.number() + ".html", plan(plan.number(), words));
        }
        for (Lesson lesson : Lessons.all()) {
            files.put(lesson.name() + "-pupil.html", pupilSheet(lesson, words));
            files.put(lesson.name() + "-answer.html", answerSheet(lesson, words));
            files.put(lesson.name() + "-picture.html", pictureSheet(lesson, words));
        }
        return files;
    }

    private static Html head(Lesson lesson, String kind, Words words) {
        Html page = new Html();
        page.element(
                "p class=\"kind\"", words.text("sheet.lesson", lesson.number()) + " · " + kind);
        page.element("h1", lesson.title(words));
        String before =
                lesson.needs().stream()
                        .map(it -> it + " " + Lessons.of(it).title(words))
                        .collect(Collectors.joining(", "));
        page.element(
                "p class=\"soft small\"",
                words.text("sheet.minutes", lesson.minutes())
                        + " · "
                        + (before.isEmpty()
                                ? words.text("sheet.before-nothing")
                                : words.text("sheet.before", before)));
        return page;
    }

    private static String label(Lesson lesson, Choice choice, Words words) {
        return lesson.asksForNumber()
                ? choice.text(words)
                : choice.letter().toUpperCase(Locale.ROOT) + ", " + choice.text(words);
    }

    private static String names(Plan plan, Words words) {
        return plan.lessons().stream()
                .map(it -> it + " " + Lessons.of(it).title(words))
                .collect(Collectors.joining(", "));
    }

    /** How to read the picture, and which of its lines is which gauge. */
    private static void lines(Html page, Lesson lesson, Words words) {
        page.element("p class=\"small\"", lesson.pictureNote(words));
        page.raw("<p class=\"small soft\">" + Html.safe(words.text("answer.gauges")) + ": ");
        page.raw(
                lesson.gauges().stream()
                        .map(
                                it ->
                                        "<code>"
                                                + it
                                                + "</code>\u00a0= "
                                                + Html.safe(lesson.gaugeName(it, words)))
                        .collect(Collectors.joining("; ")));
        page.raw("</p>\n");
    }

    private static void steps(Html page, Lesson lesson, Words words) {
        page.raw("<ol>\n");
        for (Step step : lesson.steps()) {
            page.element("li", step.text(words));
        }
        page.raw("</ol>\n");
    }

    private static void section(Html page, String head, String text) {
        page.element("h2", head);
        page.element("p", text);
    }
}
