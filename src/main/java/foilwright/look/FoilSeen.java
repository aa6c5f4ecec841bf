package foilwright.look;

import foilwright.placement.PlacedFoil;
import foilwright.units.Area;
import foilwright.units.Length;
import foilwright.units.Share;

/**
 * How much of one foil's hair comes to light.
 *
 * @param seen share of the coloured length of its hair that some side sees
 * @param buried share of its picked hairs that no side sees anywhere along their colour
 * @param shown area of its coloured hair that is seen, each part from the side that sees most of it
 * @param coloured length of all its picked hairs together that is coloured
 */
public record FoilSeen(PlacedFoil foil, Share seen, Share buried, Area shown, Length coloured) {}
