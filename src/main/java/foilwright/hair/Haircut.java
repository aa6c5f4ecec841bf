package foilwright.hair;

import foilwright.anatomy.Zone;
import foilwright.units.Length;
import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;

/**
 * A haircut: how each part of the head was held, a frame about the face, and the hair's texture.
 *
 * @param name as the house calls it
 * @param shape of the head as a whole
 * @param zones zones cut otherwise; the joins are blended
 * @param frame a shorter line about the face
 */
public record Haircut(
    String name,
    CutShape shape,
    Map<Zone, CutShape> zones,
    Optional<FaceFrame> frame,
    Texture texture) {

  /**
   * Hair about the face, cut on a line from a short point to a long one.
   *
   * @param shortest length at the front hairline on the centre line
   * @param longest length at the ear
   * @param depth how far behind the front hairline it reaches
   */
  public record FaceFrame(Length shortest, Length longest, Length depth) {
    public static final Length USUAL_DEPTH = Length.ofMillimetres(35);

    public FaceFrame {
      if (!(shortest.toMillimetres() >= 1)
          || longest.compareTo(shortest) < 0
          || longest.compareTo(CutShape.MOST) > 0) {
        throw new IllegalArgumentException(
            "a frame from "
                + shortest
                + " to "
                + longest
                + " is outside 1 mm to "
                + CutShape.MOST
                + " or runs back");
      }
      if (!(depth.toMillimetres() >= 5 && depth.toMillimetres() <= 120)) {
        throw new IllegalArgumentException("a frame " + depth + " deep is outside 5 mm to 120 mm");
      }
    }
  }

  public Haircut {
    if (name.isBlank()) {
      throw new IllegalArgumentException("a haircut needs a name");
    }
    Objects.requireNonNull(shape);
    Map<Zone, CutShape> copy = new EnumMap<>(Zone.class);
    copy.putAll(zones);
    zones = Collections.unmodifiableMap(copy);
    Objects.requireNonNull(frame);
    Objects.requireNonNull(texture);
  }

  /** A cut of one shape, without a frame, in straight hair. */
  public static Haircut of(String name, CutShape shape) {
    return new Haircut(name, shape, Map.of(), Optional.empty(), Texture.STRAIGHT);
  }

  /** A cut that is known by its name only; lengths are those typed by zone. */
  public static Haircut named(String name) {
    return of(name, new CutShape.Table());
  }

  public Haircut withTexture(Texture other) {
    return new Haircut(name, shape, zones, frame, other);
  }

  public Haircut withZone(Zone zone, CutShape other) {
    Map<Zone, CutShape> all = new EnumMap<>(Zone.class);
    all.putAll(zones);
    all.put(zone, other);
    return new Haircut(name, shape, all, frame, texture);
  }

  public Haircut withFrame(FaceFrame other) {
    return new Haircut(name, shape, zones, Optional.of(other), texture);
  }

  /** How a zone was held. */
  public CutShape in(Zone zone) {
    return zones.getOrDefault(zone, shape);
  }
}
