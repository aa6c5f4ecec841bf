package foilwright.service;

import java.util.Arrays;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What is on file for one guest. The program records answers; it does not judge whether they clear
 * anybody.
 */
public record SafetyAnswers(Map<SafetyQuestion, Answer> answers) {
  public static final SafetyAnswers NONE = new SafetyAnswers(Map.of());

  /**
   * One answer.
   *
   * @param text what was found, in the house's words
   * @param date when, as {@code YYYY-MM-DD}, if it was written down
   */
  public record Answer(String text, Optional<String> date) {
    public Answer {
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

  /** Questions that nothing on file answers. */
  public List<SafetyQuestion> missing() {
    return Arrays.stream(SafetyQuestion.values()).filter(q -> !answers.containsKey(q)).toList();
  }
}
