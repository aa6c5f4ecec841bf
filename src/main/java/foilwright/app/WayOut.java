package foilwright.app;

/** How the foils of a visit come out. */
public enum WayOut {
  /** All in, then out in the order of placing where that is safe; else out as they fall due. */
  BEST("best"),
  TOGETHER("together"),
  IN_ORDER("in-order"),
  WHILE_PLACING("while-placing"),
  WAVES("waves"),
  /** The first foils get the weaker mix, so that all can go in before any comes out. */
  TWO_MIXES("two-mixes"),
  /** The first foils today, the others another day. */
  TWO_VISITS("two-visits");

  private final String word;

  WayOut(String word) {
    this.word = word;
  }

  /** The word on the command line. */
  public String word() {
    return word;
  }
}
