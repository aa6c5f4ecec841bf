package foilwright.geometry.surface;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * A mesh divided into regions that do not overlap, indexed so that the share of any other region in
 * each is found in time linear in that region's fragments. Exact to rounding.
 */
public final class Partition {
  private static final int NONE = -1;
  private static final int CUT = -2;

  private final TriangleMesh mesh;
  private final int count;
  private final int[] owner;
  private final List<List<Piece>> pieces;

  /** A fragment of one part in a triangle that several parts divide. */
  private record Piece(int part, Region region, int fragment) {}

  private Partition(TriangleMesh mesh, List<Region> parts) {
    this.mesh = mesh;
    count = parts.size();
    owner = new int[mesh.triangleCount()];
    Arrays.fill(owner, NONE);
    double[] covered = new double[owner.length];
    for (int p = 0; p < count; p++) {
      Region part = parts.get(p);
      for (int f = 0; f < part.fragmentCount(); f++) {
        int t = part.triangle(f);
        owner[t] = owner[t] == NONE || owner[t] == p ? p : CUT;
        covered[t] += part.fragmentArea(f);
      }
    }
    for (int t = 0; t < owner.length; t++) {
      if (owner[t] >= 0 && covered[t] < mesh.area(t) * (1 - 1e-12)) {
        owner[t] = CUT;
      }
    }
    pieces = new ArrayList<>();
    int[] slot = new int[owner.length];
    for (int p = 0; p < count; p++) {
      Region part = parts.get(p);
      for (int f = 0; f < part.fragmentCount(); f++) {
        int t = part.triangle(f);
        if (owner[t] == CUT) {
          if (slot[t] == 0) {
            pieces.add(new ArrayList<>(2));
            slot[t] = pieces.size();
          }
          pieces.get(slot[t] - 1).add(new Piece(p, part, f));
        }
      }
    }
    for (int t = 0; t < owner.length; t++) {
      if (owner[t] == CUT) {
        owner[t] = CUT - slot[t];
      }
    }
  }

  /**
   * Divides a mesh; what no part takes in has no share.
   *
   * @param parts regions of the mesh that do not overlap
   */
  public static Partition of(TriangleMesh mesh, List<Region> parts) {
    return new Partition(mesh, parts);
  }

  /** Square millimetres of a region in each part, in the order of the parts. */
  public double[] areas(Region region) {
    if (region.mesh() != mesh) {
      throw new IllegalArgumentException("the region belongs to another mesh");
    }
    double[] areas = new double[count];
    for (int f = 0; f < region.fragmentCount(); f++) {
      int part = owner[region.triangle(f)];
      if (part >= 0) {
        areas[part] += region.fragmentArea(f);
      } else if (part < CUT) {
        for (Piece piece : pieces.get(CUT - part - 1)) {
          areas[piece.part] += region.sharedArea(f, piece.region, piece.fragment);
        }
      }
    }
    return areas;
  }
}
