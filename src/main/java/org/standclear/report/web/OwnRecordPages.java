package org.standclear.report.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicReference;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.standclear.people.People;
import org.standclear.platform.access.AccessLog;
import org.standclear.platform.access.Sight;
import org.standclear.platform.forms.PostOnce;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.text.PlainText;
import org.standclear.platform.time.LabTime;
import org.standclear.report.OwnRecords;
import org.standclear.report.OwnRecords.Answer;
import org.standclear.report.OwnRecords.Outcome;
import org.standclear.report.OwnRecords.Question;

/** A person's own record with their questions to it, and the questions as instructors answer them. */
@Controller
class OwnRecordPages {

    private static final int LONGEST = 800;

    private final OwnRecords records;
    private final People people;
    private final LabTime labTime;
    private final PostOnce once;
    private final AccessLog looks;

    OwnRecordPages(OwnRecords records, People people, LabTime labTime, PostOnce once, AccessLog looks) {
        this.records = records;
        this.people = people;
        this.labTime = labTime;
        this.once = once;
        this.looks = looks;
    }

    /** A question as it is shown. */
    record QuestionView(String id, String asked, String about, String words, String answered, String answer) {}

    @GetMapping("/me/record")
    String own(@AuthenticationPrincipal SignedInPerson me, Model model) {
        return own(me, Map.of(), Map.of(), model);
    }

    private String own(SignedInPerson me, Map<String, String> errors, Map<String, String> typed, Model model) {
        List<OwnRecords.Section> sections = records.of(me.id());
        Map<String, String> lines = new LinkedHashMap<>();
        sections.forEach(section -> section.lines().forEach(line -> lines.put(line, line)));
        model.addAttribute("sections", sections);
        model.addAttribute("lines", lines);
        model.addAttribute("me", me.id().toString());
        model.addAttribute("questions", views(records.questionsOf(me.id())));
        model.addAttribute("errors", errors);
        model.addAttribute("typed", typed);
        return "report/own-record";
    }

    @PostMapping("/me/record")
    String ask(
            @RequestParam Map<String, String> fields,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        AtomicReference<Map<String, String>> errors = new AtomicReference<>(Map.of());
        Optional<String> next = sent(
                fields, errors, "/me/record", words -> records.ask(me.id(), fields.getOrDefault("about", ""), words));
        if (next.isPresent()) {
            return "redirect:" + next.get();
        }
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        return own(me, Objects.requireNonNull(errors.get()), fields, model);
    }

    @GetMapping("/report/questions")
    String questions(@AuthenticationPrincipal SignedInPerson me, Model model) {
        return questions(me, "", Map.of(), Map.of(), model);
    }

    private String questions(
            SignedInPerson me, String answering, Map<String, String> errors, Map<String, String> typed, Model model) {
        List<Question> asked = records.questions();
        List<PersonId> askers = asked.stream().map(Question::askedBy).distinct().toList();
        if (!askers.isEmpty()) {
            looks.looked(me.id(), Sight.QUESTIONS, "all", askers);
        }
        model.addAttribute("headline", headline(asked));
        model.addAttribute("answering", answering);
        model.addAttribute("questions", views(asked));
        model.addAttribute("errors", errors);
        model.addAttribute("typed", typed);
        return "report/questions";
    }

    private static String headline(List<Question> asked) {
        long waiting =
                asked.stream().filter(question -> question.answer() == null).count();
        if (asked.isEmpty()) {
            return "Nobody has asked about their record";
        }
        return waiting == 0
                ? "Every question is answered"
                : waiting == 1 ? "One question waits for an answer" : waiting + " questions wait for an answer";
    }

    @PostMapping("/report/questions/{question}")
    String answer(
            @PathVariable UUID question,
            @RequestParam Map<String, String> fields,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        AtomicReference<Map<String, String>> errors = new AtomicReference<>(Map.of());
        Optional<String> next =
                sent(fields, errors, "/report/questions", words -> records.answer(question, words, me.id()));
        if (next.isPresent()) {
            return "redirect:" + next.get();
        }
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        Map<String, String> atTheField = Objects.requireNonNull(errors.get()).entrySet().stream()
                .collect(Collectors.toMap(
                        error -> error.getKey().equals("words") ? "answer-" + question : error.getKey(),
                        Map.Entry::getValue));
        return questions(me, question.toString(), atTheField, fields, model);
    }

    /** Takes the words of a form once. */
    private Optional<String> sent(
            Map<String, String> fields,
            AtomicReference<Map<String, String>> errors,
            String next,
            java.util.function.Function<String, Outcome> act) {
        PlainText.Checked words = PlainText.checkLines(fields.get("words"), LONGEST);
        if (words instanceof PlainText.Refused refused) {
            errors.set(Map.of("words", refused.says()));
            return Optional.empty();
        }
        return once.run(fields.get("formToken"), () -> {
            if (act.apply(((PlainText.Fine) words).text()) instanceof Outcome.Refused refused) {
                errors.set(Map.of(refused.field(), refused.says()));
                return null;
            }
            return next;
        });
    }

    private List<QuestionView> views(List<Question> questions) {
        Map<PersonId, String> names = people.printedNames(questions.stream()
                .flatMap(question -> Stream.of(question.askedBy(), by(question)))
                .filter(Objects::nonNull)
                .toList());
        return questions.stream().map(question -> view(question, names)).toList();
    }

    private static @Nullable PersonId by(Question question) {
        return question.answer() == null ? null : question.answer().by();
    }

    private QuestionView view(Question question, Map<PersonId, String> names) {
        Answer answer = question.answer();
        return new QuestionView(
                question.id().toString(),
                names.get(question.askedBy()) + ", " + labTime.full(question.askedAt()),
                question.about(),
                question.words(),
                answer == null ? "" : names.get(answer.by()) + ", " + labTime.full(answer.at()),
                answer == null ? "" : answer.words());
    }
}
