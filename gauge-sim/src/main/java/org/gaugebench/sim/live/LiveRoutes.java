package org.gaugebench.sim.live;

import java.net.URLDecoder;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.TreeMap;
import org.gaugebench.sim.live.form.FormRefusal;
import org.gaugebench.sim.live.form.SystemDesk;
import org.gaugebench.sim.live.lessons.Words;
import org.gaugebench.sim.page.PageAsset;

/** Which address is answered with what. */
final class LiveRoutes {
    /** First line of the answer at /hello, by which a second start knows the first one. */
    static final String HELLO = "gaugebench live page";

    private static final String SCRIPT = "text/javascript";
    private static final String STYLE = "text/css";
    private static final String LESSON = "/lesson/";
    private static final String SHEETS = "/sheets/";
    private static final String ANSWER = "/answer";
    private static final String BOOK = "/book/";

    private final Player player;
    private final LessonShelf lessons;
    private final Gate gate;
    private final String page;
    private final String form;
    private final SystemDesk desk = new SystemDesk();
    private final Map<String, String> words;

    LiveRoutes(Player player, LessonShelf lessons, Gate gate) {
        this.player = player;
        this.lessons = lessons;
        this.gate = gate;
        words = new TreeMap<>(Words.english().page());
        words.putAll(lessons.words());
        page = PageAsset.text(LiveRoutes.class, "live.html").replace("@TOKEN@", gate.token());
        form = SystemDesk.page(words, gate.token());
    }

    /**
     * Answers a request to look.
     *
     * @param path without what follows a question mark
     * @throws Refusal if there is nothing
     */
    Reply get(String path) throws Refusal {
        if (path.startsWith(LESSON)) {
            return lesson(path.substring(LESSON.length()));
        }
        if (path.startsWith(SHEETS)) {
            String paper = lessons.paper(path.substring(SHEETS.length()));
            if (paper == null) {
                throw new Refusal(404, "there is no such sheet; all are at /sheets/index.html");
            }
            return Reply.paper(paper);
        }
        if (path.startsWith(BOOK)) {
            return book(path.substring(BOOK.length()));
        }
        return switch (path) {
            case "/" -> Reply.of("text/html", page);
            case "/live.js" -> own(SCRIPT, "live.js");
            case "/chart.js" -> own(SCRIPT, "chart.js");
            case "/book.js" -> own(SCRIPT, "book.js");
            case "/live.css" -> own(STYLE, "live.css");
            case "/look.css" -> Reply.of(STYLE, PageAsset.LOOK.text());
            case "/uplot.js" -> Reply.of(SCRIPT, PageAsset.CHART_SCRIPT.text());
            case "/uplot.css" -> Reply.of(STYLE, PageAsset.CHART_STYLE.text());
            case "/licence" -> Reply.text(200, PageAsset.CHART_LICENCE.text());
            case "/hello" -> hello();
            case "/setup" -> Reply.json(player.look(SetupJson::of));
            case "/book" -> book("0");
            case "/words" -> words();
            case "/lessons" -> titles();
            case "/lesson.js" -> own(SCRIPT, "lesson.js");
            case "/save" -> save();
            case "/system" -> Reply.of("text/html", form);
            case "/system.js", "/system-chart.js" ->
                    Reply.of(SCRIPT, PageAsset.text(SystemDesk.class, path.substring(1)));
            case "/system.css" -> Reply.of(STYLE, PageAsset.text(SystemDesk.class, "system.css"));
            default -> throw new Refusal(404, "there is nothing here; the page is at /");
        };
    }

    /**
     * Takes a form that an owner filled in; nothing of it is kept.
     *
     * @param path what to do with it
     * @param body the message
     * @throws Refusal if it cannot be taken
     */
    Reply form(String path, byte[] body) throws Refusal {
        try {
            return Reply.json(
                    switch (path) {
                        case "/system/answer" -> desk.answer(body);
                        case "/system/save" -> desk.save(body);
                        case "/system/open" -> desk.open(body);
                        default -> throw new Refusal(404, "forms go to /system/answer");
                    });
        } catch (FormRefusal e) {
            throw new Refusal(e.status(), e.reason());
        }
    }

    /**
     * The sheet to print, for a form that a window sends by itself: so it opens in a window of its
     * own, and nothing of it is kept here.
     *
     * @param body fields "token" and "system", as a browser writes them
     * @throws Refusal if the token is not that of this start, or the form cannot be taken
     */
    Reply sheet(byte[] body) throws Refusal {
        Map<String, String> fields = new TreeMap<>();
        for (String pair : new String(body, StandardCharsets.UTF_8).split("&", 3)) {
            int equals = pair.indexOf('=');
            if (equals > 0) {
                fields.put(pair.substring(0, equals), decoded(pair.substring(equals + 1)));
            }
        }
        if (!gate.isToken(fields.getOrDefault("token", ""))) {
            throw new Refusal(403, "this page is of an earlier start; load it again");
        }
        try {
            String message = "{\"system\":" + fields.getOrDefault("system", "") + "}";
            return Reply.paper(desk.sheet(message.getBytes(StandardCharsets.UTF_8)));
        } catch (FormRefusal e) {
            throw new Refusal(e.status(), e.reason());
        }
    }

    private static String decoded(String text) throws Refusal {
        try {
            return URLDecoder.decode(text, StandardCharsets.UTF_8);
        } catch (IllegalArgumentException e) {
            throw new Refusal(400, "this form cannot be read; send it from the page");
        }
    }

    private Reply lesson(String rest) throws Refusal {
        boolean wantsAnswer = rest.endsWith(ANSWER);
        String number = wantsAnswer ? rest.substring(0, rest.length() - ANSWER.length()) : rest;
        int wanted = lessonNumber(number);
        String json = wantsAnswer ? lessons.answer(wanted) : lessons.json(wanted);
        if (json == null) {
            throw new Refusal(404, "there is no such lesson; there are " + lessons.count());
        }
        return Reply.json(json);
    }

    /** The account book of the gauge of that place, from 0. */
    private Reply book(String place) throws Refusal {
        int gauge = place.matches("[0-9]{1,2}") ? Integer.parseInt(place) : Integer.MAX_VALUE;
        String json =
                player.look(
                        view ->
                                gauge < view.bench().scenario().gauges().size()
                                        ? BookJson.of(view, gauge)
                                        : "");
        if (json.isEmpty()) {
            throw new Refusal(404, "there is no such meter; expected /book/0 or a little more");
        }
        return Reply.json(json);
    }

    private Reply titles() {
        return Reply.json(
                Json.object(
                        json -> {
                            json.writeArrayFieldStart("titles");
                            for (String title : lessons.titles()) {
                                json.writeString(title);
                            }
                            json.writeEndArray();
                        }));
    }

    private static Reply own(String type, String name) {
        return Reply.of(type, PageAsset.text(LiveRoutes.class, name));
    }

    private Reply hello() {
        return Reply.text(200, HELLO + "\n" + player.look(view -> view.bench().scenario().title()));
    }

    private Reply words() {
        return Reply.json(
                Json.object(
                        json -> {
                            for (Map.Entry<String, String> word : words.entrySet()) {
                                json.writeStringField(word.getKey(), word.getValue());
                            }
                        }));
    }

    private Reply save() throws Refusal {
        String text =
                player.look(
                        view ->
                                view.bench().rig().timeMillis() == 0
                                        ? ""
                                        : view.bench().scenarioText());
        if (text.isEmpty()) {
            throw new Refusal(409, "nothing has run yet; let some time pass, then save");
        }
        return Reply.file("what-happened.yaml", text);
    }

    /** Reads the number of a lesson. */
    static int lessonNumber(String text) throws Refusal {
        if (!text.matches("[1-9][0-9]{0,2}")) {
            throw new Refusal(404, "a lesson has a number from 1, such as 3");
        }
        return Integer.parseInt(text);
    }
}
