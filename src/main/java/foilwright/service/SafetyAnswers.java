package foilwright.service;

import foilwright.problem.Problem;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;

/**
 * What is on file for one guest. The program records answers; it does not judge whether they clear
 * anybody, and takes only the house's own result of a question as a reason to stop.
 */
public record SafetyAnswers(Map<SafetyQuestion, Answer> answers) {
  public static final SafetyAnswers NONE = new SafetyAnswers(Map.of());

  /** How the code of a problem begins that stops the work; told before all others. */
  public static final String STOP_CODE = "stop-";

  /**
   * One answer.
   *
   * @param text what was found, in the house's words
   * @param result what it comes to, when the house said so
   * @param date when, as {@code YYYY-MM-DD}, if it was written down
   */
  public record Answer(String text, Optional<SafetyResult> result, Optional<String> date) {
    public Answer {
      Objects.requireNonNull(result);
      if (text.isBlank()) {
        throw new IllegalArgumentException("an answer on file cannot be empty");
      }
      if (date.isPresent() && !date.get().matches("\\d{4}-\\d{2}-\\d{2}")) {
        throw new IllegalArgumentException(
            "\"" + date.get() + "\" is not a date; write year-month-day, such as 2026-03-01");
      }
    }
  }

  public SafetyAnswers {
    Map<SafetyQuestion, Answer> copy = new EnumMap<>(SafetyQuestion.class);
    copy.putAll(answers);
    answers = Collections.unmodifiableMap(copy);
  }

  public Optional<Answer> of(SafetyQuestion question) {
    return Optional.ofNullable(answers.get(question));
  }

  private Optional<SafetyResult> result(SafetyQuestion question) {
    return of(question).flatMap(Answer::result);
  }

  private List<SafetyQuestion> with(SafetyResult result) {
    return Arrays.stream(SafetyQuestion.values())
        .filter(q -> result(q).equals(Optional.of(result)))
        .toList();
  }

  /** Questions whose result says: do not go on. */
  public List<SafetyQuestion> stops() {
    return with(SafetyResult.STOP);
  }

  /** Questions that nothing on file answers, or whose answer is that it was not done. */
  public List<SafetyQuestion> missing() {
    return Arrays.stream(SafetyQuestion.values())
        .filter(
            q -> !answers.containsKey(q) || result(q).equals(Optional.of(SafetyResult.NOT_DONE)))
        .toList();
  }

  /** Questions answered in free words without a result. */
  public List<SafetyQuestion> notJudged() {
    return Arrays.stream(SafetyQuestion.values())
        .filter(q -> answers.containsKey(q) && result(q).isEmpty())
        .toList();
  }

  /** One question's line for sheets: its result and words, or that it is missing. */
  public String words(SafetyQuestion question) {
    return of(question)
        .map(
            answer ->
                answer
                        .result()
                        .map(
                            result ->
                                (result == SafetyResult.STOP ? "DO NOT GO ON: " : "")
                                    + (result == SafetyResult.NOT_DONE
                                        ? "MISSING, " + question.word(result)
                                        : question.word(result)))
                        .orElse("answered, not judged")
                    + " - "
                    + answer.text()
                    + answer.date().map(date -> " (" + date + ")").orElse(""))
        .orElse("MISSING");
  }

  /**
   * What stands against going on, then what is missing, then what was answered but not judged.
   *
   * @return warnings whose codes begin with {@link #STOP_CODE}, one warning {@code tests-missing},
   *     one note {@code tests-not-judged}
   */
  public List<Problem> problems() {
    List<Problem> problems = new ArrayList<>();
    for (SafetyQuestion question : stops()) {
      Answer answer = answers.get(question);
      problems.add(
          Problem.warning(
              STOP_CODE + question.name().toLowerCase(Locale.ROOT).replace('_', '-'),
              "tests." + question.key(),
              "DO NOT GO ON: "
                  + question.stopSentence()
                  + " (\""
                  + answer.text()
                  + "\""
                  + answer.date().map(date -> ", " + date).orElse("")
                  + ")",
              question.stopCure()));
    }
    if (!missing().isEmpty()) {
      problems.add(
          Problem.warning(
              "tests-missing",
              "tests",
              missing().size()
                  + " of "
                  + SafetyQuestion.values().length
                  + " answers on tests are MISSING: "
                  + list(missing()),
              "ask or test before anything is mixed; a missing answer is never a pass"));
    }
    if (!notJudged().isEmpty()) {
      problems.add(
          Problem.note(
              "tests-not-judged",
              "tests",
              "answered, not judged: " + list(notJudged()),
              "read the answer, and put its \"result\" beside it"));
    }
    return List.copyOf(problems);
  }

  private static String list(List<SafetyQuestion> questions) {
    return String.join("; ", questions.stream().map(SafetyQuestion::words).toList());
  }
}
