package foilwright.service.schedule;

import foilwright.service.TimeWindow;
import foilwright.units.Minutes;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/** Foils for tests. */
final class Foils {
  private Foils() {}

  static FoilTask foil(
      int number, String slot, double before, double placing, double removal, double[] window) {
    return new FoilTask(
        number,
        slot,
        Minutes.ofMinutes(before),
        Minutes.ofMinutes(placing),
        Minutes.ofMinutes(removal),
        new TimeWindow(Minutes.ofMinutes(window[0]), Minutes.ofMinutes(window[1])));
  }

  /** All alike, all times in minutes. */
  static List<FoilTask> alike(int n, double placing, double removal, double least, double most) {
    List<FoilTask> foils = new ArrayList<>();
    for (int i = 0; i < n; i++) {
      foils.add(foil(i + 1, "A", 0, placing, removal, new double[] {least, most}));
    }
    return foils;
  }

  /** Few foils with odd times and narrow windows of whole seconds, so that all rules matter. */
  static List<FoilTask> few(Random random, int n) {
    int slots = 1 + random.nextInt(3);
    double[][] windows = new double[slots][];
    double[] removal = new double[slots];
    for (int s = 0; s < slots; s++) {
      int least = random.nextInt(12);
      windows[s] = new double[] {least, least + random.nextInt(8)};
      removal[s] = random.nextInt(4);
    }
    boolean odd = random.nextInt(3) == 0;
    List<FoilTask> foils = new ArrayList<>();
    for (int i = 0; i < n; i++) {
      int s = random.nextInt(slots);
      foils.add(
          foil(
              i + 1,
              String.valueOf((char) ('A' + s)),
              random.nextInt(4) == 0 ? 1 + random.nextInt(3) : 0,
              1 + random.nextInt(4),
              odd ? random.nextInt(4) : removal[s],
              windows[s]));
    }
    return foils;
  }

  /** What a full head asks: many foils, up to three mixes, now and then a section or a bowl. */
  static List<FoilTask> many(Random random, int n) {
    int slots = 1 + random.nextInt(3);
    double base = 0.7 + random.nextDouble() * 1.3;
    double removal = 0.25 + 0.35 * random.nextDouble();
    double[][] windows = new double[slots][];
    for (int s = 0; s < slots; s++) {
      double least = s == 0 ? 20 : 15 + random.nextInt(16);
      windows[s] = new double[] {least, s == 0 ? 45 : least + 15 + random.nextInt(11)};
    }
    List<FoilTask> foils = new ArrayList<>();
    int slot = 0;
    for (int i = 0; i < n; i++) {
      slot = random.nextInt(8) == 0 ? random.nextInt(slots) : slot;
      foils.add(
          foil(
              i + 1,
              String.valueOf((char) ('A' + slot)),
              random.nextInt(15) == 0 ? 1 + 4 * random.nextDouble() : 0,
              Math.min(2.6, Math.max(0.7, base * (0.8 + 0.5 * random.nextDouble()))),
              removal,
              windows[slot]));
    }
    return foils;
  }
}
