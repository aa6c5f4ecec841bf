package foilwright.service;

/** What a pace profile holds a time for. */
public enum PaceEntry {
  CONSULT("consult", "consult"),
  GOWN_AND_SECTION("gownAndSection", "gown and section"),
  MIX_BOWL("mixBowl", "mix a bowl"),
  SET_SECTION("setSection", "set a section (partings and clips)"),
  FOIL("foil", "one foil, whatever its size"),
  PER_CENTIMETRE_OF_PARTING("perCentimetreOfParting", "one foil, per cm of parting"),
  PER_PICK("perPick", "one foil, per pick"),
  PER_CENTIMETRE_OF_HAIR("perCentimetreOfHair", "one foil, per cm of hair length"),
  CHECK_ROUND("checkRound", "check round"),
  REMOVE_FOIL("removeFoil", "remove one foil"),
  RINSE("rinse", "rinse"),
  APPLY_TONER("applyToner", "apply toner"),
  DEVELOP_TONER("developToner", "develop toner"),
  WASH("wash", "wash"),
  DRY("dry", "dry, whatever the length"),
  DRY_PER_CENTIMETRE_OF_HAIR(
      "dryPerCentimetreOfHair", "dry, per cm of mean hair length at 200 hairs per cm2"),
  RECORD("record", "write the record");

  private final String key;
  private final String words;

  PaceEntry(String key, String words) {
    this.key = key;
    this.words = words;
  }

  /** The key used in documents. */
  public String key() {
    return key;
  }

  /** Whether it is part of placing foils, from the first parting to the last foil. */
  public boolean placing() {
    return switch (this) {
      case SET_SECTION, FOIL, PER_CENTIMETRE_OF_PARTING, PER_PICK, PER_CENTIMETRE_OF_HAIR -> true;
      default -> false;
    };
  }

  /** The words used on sheets. */
  public String words() {
    return words;
  }
}
