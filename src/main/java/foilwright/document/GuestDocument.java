package foilwright.document;

import foilwright.hair.HairProfile;
import foilwright.hair.Level;
import foilwright.head.HairlineSettings;
import foilwright.head.Head;
import foilwright.head.HeadKind;
import foilwright.head.HeadSettings;
import foilwright.head.PartSetting;
import foilwright.head.TapeMeasurements;
import foilwright.problem.Problem;
import foilwright.service.SafetyAnswers;
import java.time.LocalDate;
import java.util.Objects;
import java.util.Optional;

/**
 * One guest, by number and never by name.
 *
 * @param number such as {@code guest-07}
 * @param head the default head that fills in what the tape did not measure
 * @param tests what is on file; a missing answer stays missing
 * @param wish level that the lightened hair is to reach, if it was said
 */
public record GuestDocument(
    String number,
    HeadKind head,
    TapeMeasurements tapes,
    HairlineSettings hairline,
    PartSetting part,
    HairProfile hair,
    History history,
    SafetyAnswers tests,
    Optional<Level> wish) {

  /**
   * What is known of the last visit.
   *
   * @param pattern title of the pattern that was worked
   */
  public record History(Optional<LocalDate> lastVisit, Optional<String> pattern) {
    public static final History NONE = new History(Optional.empty(), Optional.empty());

    public History {
      Objects.requireNonNull(lastVisit);
      Objects.requireNonNull(pattern);
    }
  }

  /** What a guest's number looks like. */
  static final String NUMBER_FORM = "guest-\\d{2,6}";

  public GuestDocument {
    if (!number.matches(NUMBER_FORM)) {
      throw new IllegalArgumentException("a guest's number looks like guest-07, not " + number);
    }
    Objects.requireNonNull(head);
    Objects.requireNonNull(tapes);
    Objects.requireNonNull(hairline);
    Objects.requireNonNull(part);
    Objects.requireNonNull(hair);
    Objects.requireNonNull(history);
    Objects.requireNonNull(tests);
    Objects.requireNonNull(wish);
  }

  /** The guest's head under a house's settings; problems lie at the tapes of this document. */
  public Head.Fitted fitHead(HeadSettings settings) {
    Head.Fitted fitted = Head.fit(head, tapes, hairline, part, settings);
    return new Head.Fitted(
        fitted.head(),
        fitted.problems().stream()
            .map(
                p ->
                    new Problem(
                        p.code(),
                        p.severity(),
                        p.path().isEmpty() ? "head" : "head." + p.path(),
                        p.message(),
                        p.cure(),
                        p.place()))
            .toList());
  }
}
