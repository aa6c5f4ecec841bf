package foilwright.service.schedule;

/** When foils come out. */
public enum Removal {
  /** All out at one moment: the ideal case, which no single pair of hands reaches. */
  TOGETHER("all out together"),
  /** All in, then out one by one in the order of placing. */
  IN_PLACING_ORDER("all in, then out in the order of placing"),
  /** Each when it suits best, also before the last is in. */
  WHILE_PLACING("out as they fall due, also while placing"),
  /** Wave by wave: a wave is placed, develops and comes out before the next one is begun. */
  IN_WAVES("in waves");

  private final String words;

  Removal(String words) {
    this.words = words;
  }

  /** The words used in documents and on sheets. */
  public String words() {
    return words;
  }
}
