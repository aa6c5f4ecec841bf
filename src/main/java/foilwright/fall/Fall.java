package foilwright.fall;

import foilwright.hair.HairOnHead;
import foilwright.hair.HairProfile;
import foilwright.hair.Texture;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.IntStream;

/**
 * Lets every hair fall.
 *
 * <p>A hair sets out from its root along the comb, a little off the scalp, and is then followed in
 * steps by a {@link Strand}. At each step it turns from the direction it had towards the one it
 * wants; what it wants is straight down and, fading along the hair, the direction it was combed in.
 * Where it meets what lies beneath, it loses what leads inwards and slides on. What lies beneath is
 * the skin and the hair it has run over: the more scalp lies between it and its root, the more, up
 * to the depth of the whole coat. So hair from above lies on hair from below, and the hair of the
 * hairline lies on the skin.
 *
 * <p>It turns as a fibre does that hangs by its end: at the angle phi from what it wants by 2
 * sin(phi / 2) / memory radians a millimetre, the elastica under a pull. The memory is that fibre's
 * bending length under its pull, sqrt(EI / T), and grows with the diameter as the bending length
 * under a fibre's own weight does, (EI / w)^(1/3) ~ d^(2/3). Its size, {@value #MEMORY_MM} mm for a
 * hair {@value #MEMORY_DIAMETER_MM} mm across, is a setting of this program: a fifth of the 45 mm
 * that (EI / w)^(1/3) gives for a single dry hair (3.89 GPa, 1.32 g/cm3), for hair that was combed
 * wet lies with its neighbours.
 */
public final class Fall {
  /** How soon a hair of the usual diameter follows what it wants: 0.72 is kept over 3 mm. */
  static final double MEMORY_MM = 9.13;

  /** The diameter for which that holds. */
  static final double MEMORY_DIAMETER_MM = 0.07;

  /** So many hairs at least, and at most, are followed by one thread before it asks for more. */
  private static final int LEAST_CHUNK = 1024;

  private static final int MOST_CHUNK = 3200;

  /** Share of the space in a head of hair that is hair, as it lies combed. */
  private static final double FILLED = 0.06;

  /** Depth of the whole coat for usual hair. */
  private static final double COAT_MM = 13;

  final Roots roots;
  final Body body;
  final FallSettings settings;
  final Texture texture;
  final double step;
  final double memory;

  /** How much deeper hair lies for each millimetre of scalp that it has run over, at first. */
  final double perMm;

  /** Depth of the whole coat, millimetres. */
  final double coat;

  private Fall(Roots roots, Body body, FallSettings settings, Texture texture, double memoryMm) {
    this.roots = roots;
    this.body = body;
    this.settings = settings;
    this.texture = texture;
    memory = memoryMm;
    step = settings.step().toMillimetres();
    HairProfile hair = roots.hair().hair();
    double d = hair.diameter().toMillimetres();
    perMm = hair.density().toHairsPerSquareMillimetre() * Math.PI * d * d / 4 / FILLED;
    coat = COAT_MM * Math.sqrt(Math.min(2, perMm / 0.128)) + 0.7 * texture.radiusMm();
  }

  /**
   * The fall of all hair.
   *
   * @param watch is told how much is done and may stop it
   * @throws java.util.concurrent.CancellationException when the watcher stops it
   */
  public static Strands of(
      HairOnHead hair, Body body, FallSettings settings, Texture texture, Watch watch) {
    double memory = memoryMm(hair.hair().diameter().toMillimetres());
    return new Fall(Roots.of(hair, settings), body, settings, texture, memory).run(watch);
  }

  /** The fall of given roots with a given memory. */
  static Strands of(
      Roots roots, Body body, FallSettings settings, Texture texture, double memoryMm) {
    return new Fall(roots, body, settings, texture, memoryMm).run(Watch.NOBODY);
  }

  /** Memory of a hair, millimetres, by its diameter in millimetres. */
  static double memoryMm(double diameterMm) {
    return MEMORY_MM * Math.pow(diameterMm / MEMORY_DIAMETER_MM, 2 / 3.0);
  }

  private Strands run(Watch watch) {
    int count = roots.count();
    int[] starts = new int[count + 1];
    for (int i = 0; i < count; i++) {
      int links = (int) Math.max(1, Math.ceil(roots.lengthMm(i) / step - 1e-6));
      starts[i + 1] = starts[i] + links + 1;
    }
    float[] points = new float[3 * starts[count]];
    AtomicInteger done = new AtomicInteger();
    int chunk = Math.max(LEAST_CHUNK, Math.min(MOST_CHUNK, count / 8));
    int chunks = (count + chunk - 1) / chunk;
    IntStream.range(0, chunks)
        .parallel()
        .forEach(
            c -> {
              Strand strand = new Strand(this);
              int to = Math.min(count, (c + 1) * chunk);
              strand.follow(c * chunk, to, starts, points);
              watch.told(done.incrementAndGet() / (double) chunks);
            });
    return new Strands(roots, body, settings, starts, points);
  }
}
