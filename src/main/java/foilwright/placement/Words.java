package foilwright.placement;

import foilwright.geometry.Vector3;
import foilwright.pattern.SectionShape;

/** Trade words for what was placed. */
final class Words {
  private Words() {}

  static String shape(SectionShape shape) {
    return shape.match(
        new SectionShape.Cases<>() {
          @Override
          public String horizontal(SectionShape.Horizontal s) {
            return "horizontal";
          }

          @Override
          public String diagonal(SectionShape.Diagonal s) {
            return "diagonal";
          }

          @Override
          public String vertical(SectionShape.Vertical s) {
            return "vertical";
          }

          @Override
          public String v(SectionShape.V s) {
            return "V";
          }

          @Override
          public String halo(SectionShape.Halo s) {
            return "halo";
          }

          @Override
          public String pivot(SectionShape.Pivot s) {
            return "pivot";
          }

          @Override
          public String acrossFall(SectionShape.AcrossFall s) {
            return "across the fall";
          }

          @Override
          public String alongFall(SectionShape.AlongFall s) {
            return "along the fall";
          }
        });
  }

  /**
   * The lower end of a parting: as its section calls it where that is the lower end, else by where
   * it lies.
   */
  static String lowerEnd(SectionShape shape, Vector3 down, Vector3 centre, boolean above) {
    if (shape instanceof SectionShape.Diagonal diagonal) {
      double outward = down.x() * (centre.x() < 0 ? -1 : 1);
      double agrees =
          switch (diagonal.lowerEnd()) {
            case FACE -> down.y();
            case BACK -> -down.y();
            case EAR -> outward;
            case CENTRE -> -outward;
            case CLIENTS_LEFT -> -down.x();
            case CLIENTS_RIGHT -> down.x();
          };
      if (agrees > 0) {
        return diagonal.lowerEnd().words();
      }
    }
    if (shape instanceof SectionShape.V v) {
      boolean pointIsLower = v.apex() == SectionShape.Apex.DOWN;
      return pointIsLower ? "point" : "outer";
    }
    return end(down, centre, above);
  }

  /**
   * The end of a parting that a direction leads to.
   *
   * @param toward along the parting from its centre, mm
   * @param above whether it is seen from above, where the lower end is the one nearer the back
   */
  private static String end(Vector3 toward, Vector3 centre, boolean above) {
    boolean sideways = above || Math.abs(toward.x()) >= Math.abs(toward.y());
    if (!sideways) {
      return toward.y() > 0 ? "face" : "back";
    }
    if (Math.abs(centre.x()) < 5) {
      return toward.x() < 0 ? "client's left" : "client's right";
    }
    return toward.x() * centre.x() > 0 ? "ear" : "centre";
  }
}
