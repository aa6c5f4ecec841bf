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
   * The end of a parting that a direction leads to.
   *
   * @param toward along the parting from its centre, mm
   * @param above whether it is seen from above, where the lower end is the one nearer the back
   */
  static String end(Vector3 toward, Vector3 centre, boolean above) {
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
