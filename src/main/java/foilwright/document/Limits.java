package foilwright.document;

/** How much a document may hold; a page of plain writing is a hundredth of it. */
final class Limits {
  /** Bytes of a document. */
  static final int SIZE = 1_000_000;

  /** Brackets within brackets. */
  static final int DEPTH = 16;

  /** Characters of a name or title. */
  static final int NAME = 80;

  /** Characters of a sentence. */
  static final int SENTENCE = 600;

  /** Entries of one list. */
  static final int ENTRIES = 200;

  private Limits() {}
}
