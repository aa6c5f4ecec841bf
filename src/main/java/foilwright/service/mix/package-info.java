/**
 * The scale: how much mix each foil takes, which bowls are weighed and when, what foil is cut, what
 * a developer's strength is, what toner is mixed.
 *
 * <p>Masses are grams of mixed product unless said otherwise. Constants that ship are common
 * practice of the trade; a house corrects them by weighing its bowls back.
 */
package foilwright.service.mix;
