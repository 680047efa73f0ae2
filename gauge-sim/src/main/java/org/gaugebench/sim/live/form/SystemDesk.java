package org.gaugebench.sim.live.form;

import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * Where forms are handed in. Nothing of them is kept: each message brings the whole form, and each
 * answer is forgotten when it is given. Safe for several threads.
 */
public final class SystemDesk {
    /** Most bytes of a message. */
    public static final int LARGEST_MESSAGE = MySystemFile.LARGEST_BYTES;

    /** Answers at a time: each takes a core for up to two seconds, and the bench needs one too. */
    private static final int MOST_ANSWERS = 2;

    private static final long LONGEST_WAIT_SECONDS = 10;
    private static final List<String> PARTS = List.of("question", "system");

    private final Semaphore answers = new Semaphore(MOST_ANSWERS, true);

    /** A message: a form, and what is asked. */
    private static final class Asked {
        private @Nullable MySystem system;
        private String question = "";

        boolean take(String key, JsonParser parser) throws IOException, FormRefusal {
            if (key.equals("question") && parser.currentToken() == JsonToken.VALUE_STRING) {
                question = parser.getText();
                return true;
            }
            if (key.equals("system")) {
                system = MySystemFile.read(parser);
                return true;
            }
            return false;
        }
    }

    /**
     * The page.
     *
     * @param words of the page, by their keys
     * @param token that messages have to bring
     */
    public static String page(Map<String, String> words, String token) {
        return FormPage.html(words, token);
    }

    /**
     * Answers a question.
     *
     * @param body a message: an object with "question" and "system"
     * @return an answer, or an object with "wrong", a list of fields and messages
     * @throws FormRefusal if the message cannot be read, or too many ask at once
     */
    public String answer(byte[] body) throws FormRefusal {
        Asked asked = read(body);
        Question question = Question.of(asked.question);
        if (question == null) {
            throw new FormRefusal(
                    400,
                    "expected a question such as %s"
                            .formatted(
                                    Arrays.stream(Question.values())
                                            .map(Question::key)
                                            .collect(Collectors.joining(", "))));
        }
        MySystem form = form(asked);
        List<FormReading.Wrong> wrong = new ArrayList<>();
        FormReading.Read read = FormReading.read(form, wrong);
        boolean isNoted = form.notes().stream().anyMatch(it -> !it.isEmpty());
        need(question == Question.SYMPTOM && !isNoted, form, FormField.SEEN, wrong);
        need(question == Question.CHANGED, form, FormField.CHANGED, wrong);
        if (read != null && question == Question.SYMPTOM && isNoted) {
            NoteRows.enough(read.notes(), wrong);
        }
        if (read == null || !wrong.isEmpty()) {
            return wrong(wrong);
        }
        take();
        try {
            Answers answers = new Answers(read);
            return switch (question) {
                case SIZE -> answers.size();
                case MONTH -> answers.month();
                case AUDIT -> answers.audit();
                case SYMPTOM -> answers.symptom();
                case CHANGED -> answers.changed();
            };
        } finally {
            answers.release();
        }
    }

    private void take() throws FormRefusal {
        try {
            if (answers.tryAcquire(LONGEST_WAIT_SECONDS, TimeUnit.SECONDS)) {
                return;
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        throw new FormRefusal(503, "too many questions at once; ask again in a moment");
    }

    /** Where the question itself is not known, there is no answer. */
    private static void need(
            boolean isAsked, MySystem form, FormField field, List<FormReading.Wrong> wrong) {
        if (isAsked && form.text(field) == null) {
            wrong.add(
                    new FormReading.Wrong(field.key(), "expected one of these, such as the first"));
        }
    }

    private static MySystem form(Asked asked) throws FormRefusal {
        MySystem form = asked.system;
        if (form == null) {
            throw new FormRefusal(400, "expected a form under \"system\"; there is none");
        }
        return form;
    }

    private static Asked read(byte[] body) throws FormRefusal {
        Asked asked = new Asked();
        MySystemFile.parse(body, asked::take, PARTS);
        return asked;
    }

    /**
     * The file of a form.
     *
     * @param body a message: an object with "system"
     * @return an object with "name" and "text", or with "wrong"
     * @throws FormRefusal if the message cannot be read
     */
    public String save(byte[] body) throws FormRefusal {
        MySystem form = form(read(body));
        List<FormReading.Wrong> wrong = new ArrayList<>();
        if (FormReading.read(form, wrong) == null) {
            return wrong(wrong);
        }
        return AnswerJson.object(
                json -> {
                    json.writeStringField("name", MySystemFile.NAME);
                    json.writeStringField("text", MySystemFile.write(form));
                });
    }

    /**
     * Opens a file.
     *
     * @param body the file as it is
     * @return an object with "system", for the page to show
     * @throws FormRefusal with one sentence if anything of it is wrong
     */
    public String open(byte[] body) throws FormRefusal {
        MySystem form = MySystemFile.read(body);
        List<FormReading.Wrong> wrong = new ArrayList<>();
        if (FormReading.read(form, wrong) == null) {
            FormReading.Wrong first = wrong.get(0);
            throw new FormRefusal(
                    400, "%s in this file: %s".formatted(first.field(), first.message()));
        }
        return AnswerJson.object(
                json -> {
                    json.writeFieldName("system");
                    MySystemFile.write(json, form);
                });
    }

    /**
     * The sheet to print.
     *
     * @param body a message: an object with "system"
     * @return a whole HTML document
     * @throws FormRefusal if the message cannot be read, or anything of the form is wrong
     */
    public String sheet(byte[] body) throws FormRefusal {
        MySystem form = form(read(body));
        List<FormReading.Wrong> wrong = new ArrayList<>();
        FormReading.Read read = FormReading.read(form, wrong);
        if (read == null) {
            throw new FormRefusal(
                    400, "%s: %s".formatted(wrong.get(0).field(), wrong.get(0).message()));
        }
        take();
        try {
            return new Answers(read).sheet(form);
        } finally {
            answers.release();
        }
    }

    private static String wrong(List<FormReading.Wrong> wrong) {
        return AnswerJson.object(
                json -> {
                    json.writeArrayFieldStart("wrong");
                    for (FormReading.Wrong each : wrong) {
                        json.writeStartObject();
                        json.writeStringField("field", each.field());
                        json.writeStringField("message", each.message());
                        json.writeEndObject();
                    }
                    json.writeEndArray();
                });
    }
}
