package foilwright.pattern;

/**
 * A place in the plan for one mix; house data binds it to a product. By habit A is the lightener, B
 * a lowlight or second strength.
 */
public enum MixSlot {
  A,
  B,
  C,
  D
}
