/**
 * Typed quantities with their text forms.
 *
 * <p>Inside: millimetres, radians, square millimetres, seconds, milligrams, and plain fractions.
 * Every quantity is immutable, finite and compared by value; its text form always carries a unit.
 * Parsing accepts a decimal point only, never a locale's comma. Conversions are exact by definition
 * of the inch (25.4 mm) to within one rounding of a double.
 */
package foilwright.units;
