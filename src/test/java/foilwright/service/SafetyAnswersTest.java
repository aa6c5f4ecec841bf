package foilwright.service;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import foilwright.problem.Problem;
import java.time.LocalDate;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class SafetyAnswersTest {
  private static final LocalDate VISIT = LocalDate.of(2026, 3, 4);

  private static SafetyAnswers.Answer answer(SafetyResult result) {
    return new SafetyAnswers.Answer("as seen", Optional.of(result), Optional.of("2026-02-28"));
  }

  /** Everything clear but one. */
  private static SafetyAnswers allBut(SafetyQuestion one, Optional<SafetyAnswers.Answer> is) {
    Map<SafetyQuestion, SafetyAnswers.Answer> answers = new EnumMap<>(SafetyQuestion.class);
    for (SafetyQuestion question : SafetyQuestion.values()) {
      answers.put(question, answer(SafetyResult.CLEAR));
    }
    answers.remove(one);
    is.ifPresent(a -> answers.put(one, a));
    return new SafetyAnswers(answers);
  }

  private static List<String> codes(List<Problem> problems) {
    return problems.stream().map(Problem::code).toList();
  }

  @ParameterizedTest
  @EnumSource
  void eachQuestionCanStopTheWork(SafetyQuestion question) {
    SafetyAnswers tests = allBut(question, Optional.of(answer(SafetyResult.STOP)));
    assertEquals(List.of(question), tests.stops());
    Problem told = tests.problems().get(0);
    assertTrue(told.code().startsWith("stop-"), told.code());
    assertTrue(told.message().startsWith("DO NOT GO ON"), told.message());
    assertEquals("tests." + question.key(), told.path());
    assertTrue(tests.words(question).startsWith("DO NOT GO ON"));
    assertEquals(1, tests.problems().size());
  }

  @ParameterizedTest
  @EnumSource
  void notDoneIsMissing(SafetyQuestion question) {
    for (Optional<SafetyAnswers.Answer> is :
        List.of(
            Optional.<SafetyAnswers.Answer>empty(), Optional.of(answer(SafetyResult.NOT_DONE)))) {
      SafetyAnswers tests = allBut(question, is);
      assertEquals(List.of(question), tests.missing());
      assertEquals(List.of("tests-missing"), codes(tests.problems()));
      assertTrue(tests.words(question).startsWith("MISSING"));
    }
  }

  @ParameterizedTest
  @EnumSource
  void freeWordsAreNotJudged(SafetyQuestion question) {
    SafetyAnswers tests =
        allBut(
            question,
            Optional.of(
                new SafetyAnswers.Answer("looked at it", Optional.empty(), Optional.empty())));
    assertEquals(List.of("tests-not-judged"), codes(tests.problems()));
    assertEquals("answered, not judged - looked at it", tests.words(question));
    assertEquals(List.of(), tests.missing());
  }

  @Test
  void stopsComeFirstThenWhatIsMissing() {
    Map<SafetyQuestion, SafetyAnswers.Answer> answers = new EnumMap<>(SafetyQuestion.class);
    answers.put(SafetyQuestion.ELASTICITY, answer(SafetyResult.STOP));
    answers.put(SafetyQuestion.AGE_RULE, answer(SafetyResult.STOP));
    answers.put(
        SafetyQuestion.SCALP_CONDITION,
        new SafetyAnswers.Answer("dry", Optional.empty(), Optional.empty()));
    assertEquals(
        List.of("stop-age-rule", "stop-elasticity", "tests-missing", "tests-not-judged"),
        codes(new SafetyAnswers(answers).problems()));
    assertEquals(List.of("tests-missing"), codes(SafetyAnswers.NONE.problems()));
  }

  @Test
  void nothingAgainstSaysNothing() {
    assertEquals(
        List.of(),
        allBut(SafetyQuestion.AGE_RULE, Optional.of(answer(SafetyResult.CLEAR))).problems());
  }

  /** Days only: three days are more than 48 h, two may be less, one is. */
  @ParameterizedTest
  @CsvSource({
    "2026-03-01,",
    "2025-09-20,",
    "2025-03-01, alert-test-old",
    "2026-03-02, alert-test-two-days",
    "2026-03-03, stop-alert-test-too-late",
    "2026-03-04, stop-alert-test-too-late",
    "2026-03-05, stop-alert-test-after-visit"
  })
  void theAlertTestLiesBeforeTheVisit(String tested, String code) {
    SafetyAnswers tests =
        allBut(
            SafetyQuestion.ALLERGY_ALERT_TEST,
            Optional.of(
                new SafetyAnswers.Answer(
                    "clear", Optional.of(SafetyResult.CLEAR), Optional.of(tested))));
    assertEquals(
        code == null ? List.of() : List.of(code),
        codes(AlertTest.problems(tests, VISIT, List.of("toner, entry 1"))));
  }

  @Test
  void anAlertTestWithoutADateIsSaid() {
    SafetyAnswers tests =
        allBut(
            SafetyQuestion.ALLERGY_ALERT_TEST,
            Optional.of(
                new SafetyAnswers.Answer(
                    "clear", Optional.of(SafetyResult.CLEAR), Optional.empty())));
    Problem told = AlertTest.problems(tests, VISIT, List.of("toner, entry 1")).get(0);
    assertEquals("alert-test-without-date", told.code());
    assertTrue(told.cure().contains("toner, entry 1"), told.cure());
    assertEquals(List.of(), AlertTest.problems(SafetyAnswers.NONE, VISIT, List.of()));
  }
}
