package foilwright.service;

import foilwright.anatomy.Side;
import foilwright.anatomy.Zone;
import foilwright.geometry.Polyline;
import foilwright.geometry.Vector3;
import foilwright.geometry.surface.Region;
import foilwright.geometry.surface.TriangleMesh;
import foilwright.placement.Find;
import foilwright.placement.PlacedFoil;
import foilwright.placement.PlacedSection;
import foilwright.placement.Placement;
import foilwright.units.Angle;
import foilwright.units.Area;
import foilwright.units.Length;
import foilwright.units.Mass;
import foilwright.units.Minutes;
import foilwright.units.Share;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Placements, paces and products with plain numbers, for the sums of this package. */
public final class ServiceSamples {
  private static final Region REGION =
      Region.whole(
          TriangleMesh.of(new double[] {0, 0, 0, 10, 0, 0, 0, 10, 0}, new int[] {0, 1, 2}));

  private ServiceSamples() {}

  /** A pace with nothing in it but the named entries. */
  public static PaceProfile pace(Share daySpread, Map<PaceEntry, ThreePoint> named) {
    Map<PaceEntry, ThreePoint> times = new EnumMap<>(PaceEntry.class);
    for (PaceEntry entry : PaceEntry.values()) {
      times.put(entry, named.getOrDefault(entry, ThreePoint.NONE));
    }
    return new PaceProfile("sample", "invented for a test", times, daySpread);
  }

  public static ThreePoint always(double minutes) {
    return ThreePoint.same(Minutes.ofMinutes(minutes));
  }

  public static ProductEntry lightener(double leastMin, double mostMin, double bowlLifeMin) {
    return new ProductEntry(
        "powder lightener, entry 1",
        ProductKind.LIGHTENER,
        new MixRatio(1, 2),
        Share.ofPercent(6),
        new TimeWindow(Minutes.ofMinutes(leastMin), Minutes.ofMinutes(mostMin)),
        Minutes.ofMinutes(bowlLifeMin),
        TakeUp.USUAL,
        true);
  }

  /** Sections of equal foils, 100 mm wide with 12.5 picks in hair of 250 mm, mix slot A. */
  public static Placement placement(int sections, int foilsEach) {
    List<PlacedSection> placed = new ArrayList<>();
    List<PlacedFoil> all = new ArrayList<>();
    for (int s = 0; s < sections; s++) {
      List<PlacedFoil> foils = new ArrayList<>();
      for (int i = 0; i < foilsEach; i++) {
        foils.add(foil(all.size() + foils.size() + 1, s, i + 1));
      }
      all.addAll(foils);
      placed.add(
          new PlacedSection(
              s,
              "section " + (s + 1),
              "horizontal",
              REGION,
              foils,
              List.of(),
              List.of(),
              List.of(),
              REGION,
              new PlacedSection.Figures(Area.ofSquareMillimetres(50), 100, 50, Share.ZERO),
              "",
              List.of()));
    }
    return new Placement(placed, all, List.of());
  }

  private static PlacedFoil foil(int number, int section, int row) {
    return new Foil(number, Zone.CROWN, "A").placed(section, row);
  }

  /** Foils of one section with the named differences. */
  public static Placement placement(List<Foil> foils) {
    List<PlacedFoil> placed = new ArrayList<>();
    for (Foil foil : foils) {
      placed.add(foil.placed(0, placed.size() + 1));
    }
    return new Placement(List.of(), placed, List.of());
  }

  /** A foil with plain numbers. */
  public record Foil(
      int number,
      Zone zone,
      String slot,
      double widthMm,
      double hairGrams,
      double lengthMm,
      double startMm,
      double picked) {
    public Foil(int number, Zone zone, String slot) {
      this(number, zone, slot, 100, 0.5, 250, 0, 0.5);
    }

    private PlacedFoil placed(int section, int row) {
      return foil(this, section, row);
    }
  }

  private static PlacedFoil foil(Foil foil, int section, int row) {
    Polyline line = Polyline.of(List.of(Vector3.ZERO, new Vector3(100, 0, 0)));
    Find find = new Find(Length.ZERO, Length.ZERO, "here");
    return new PlacedFoil(
        foil.number(),
        "section " + (section + 1),
        section,
        row,
        1,
        Side.LEFT,
        foil.zone(),
        "horizontal",
        foil.slot(),
        REGION,
        line,
        line,
        Vector3.UP,
        Angle.ZERO,
        Optional.empty(),
        Length.ofMillimetres(foil.widthMm()),
        Length.ofMillimetres(4),
        Length.ofMillimetres(4),
        Length.ofMillimetres(8),
        Area.ofSquareMillimetres(400),
        Share.ofFraction(foil.picked()),
        12.5,
        800,
        400,
        Mass.ofGrams(foil.hairGrams()),
        Length.ofMillimetres(foil.lengthMm()),
        Length.ofMillimetres(foil.startMm()),
        find,
        find,
        find);
  }
}
