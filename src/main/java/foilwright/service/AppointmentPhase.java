package foilwright.service;

/** The blocks of a visit, in order. */
public enum AppointmentPhase {
  CONSULT("consult", true),
  GOWN_AND_SECTION("gown and section", true),
  MIX("mix the bowls", true),
  PLACE("place the foils", true),
  DEVELOP("develop, with checks", false),
  REMOVE("remove the foils", true),
  RINSE("rinse", true),
  APPLY_TONER("apply toner", true),
  DEVELOP_TONER("develop toner", false),
  WASH("wash", true),
  DRY("dry", true),
  RECORD("write the record", true);

  private final String words;
  private final boolean hands;

  AppointmentPhase(String words, boolean hands) {
    this.words = words;
    this.hands = hands;
  }

  /** The words used on sheets. */
  public String words() {
    return words;
  }

  /** Whether hands are busy throughout, so that the pace of the day stretches it. */
  public boolean hands() {
    return hands;
  }
}
