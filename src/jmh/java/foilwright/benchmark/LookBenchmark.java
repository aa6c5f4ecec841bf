package foilwright.benchmark;

import foilwright.anatomy.PartSide;
import foilwright.fall.Body;
import foilwright.fall.Fall;
import foilwright.fall.FallSettings;
import foilwright.fall.Strands;
import foilwright.fall.Watch;
import foilwright.hair.HairOnHead;
import foilwright.hair.HairProfile;
import foilwright.hair.Level;
import foilwright.hair.Texture;
import foilwright.head.Head;
import foilwright.head.HeadKind;
import foilwright.head.PartSetting;
import foilwright.look.Dye;
import foilwright.look.HairColours;
import foilwright.look.Look;
import foilwright.look.LookSettings;
import foilwright.look.LookSide;
import foilwright.look.Studio;
import foilwright.units.Density;
import foilwright.units.Length;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/**
 * The fall of hairs 250 mm long in steps of 3 mm, and five views of them 400 pixels high. Target
 * for both together at 100 thousand hairs on two processors: 0.5 s, at most 1 s; at 10 thousand 60
 * ms.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(1)
@Warmup(iterations = 4, time = 2)
@Measurement(iterations = 4, time = 2)
public class LookBenchmark {
  /** How many hairs are followed. */
  @Param({"10000", "100000", "300000"})
  public int hairs;

  private HairOnHead hair;
  private Body body;
  private FallSettings settings;
  private Strands strands;
  private Dye dye;
  private LookSettings shown;
  private LookSettings front;
  private Studio studio;

  @Setup
  public void combHair() {
    Head head = Head.usual(HeadKind.WOMAN).withPart(PartSetting.of(PartSide.CENTRE));
    hair =
        HairOnHead.of(
            head,
            HairProfile.usual(Length.ofMillimetres(250))
                .withDensity(Density.ofHairsPerSquareCentimetre(560)));
    body = Body.of(head);
    settings = FallSettings.USUAL.withHairs(hairs);
    strands = fall();
    dye = Dye.before(strands.roots(), Length.ZERO);
    shown = LookSettings.of(HairColours.usual(new Level(5)));
    studio = Studio.of(strands, shown.heightPx());
    front = shown.withSides(List.of(LookSide.FRONT));
    // For nanoseconds a step, and a point and view.
    System.out.printf("%npoints: %d, in five views %d%n", n(1), n(LookSide.values().length));
  }

  private long n(int times) {
    return (long) times * strands.pointCount();
  }

  @Benchmark
  public Strands fall() {
    return Fall.of(hair, body, settings, Texture.STRAIGHT, Watch.NOBODY);
  }

  @Benchmark
  public Look fiveViews() {
    return Look.at(strands, dye, studio, shown, Watch.NOBODY);
  }

  /** What is shown first after the hair itself has changed. */
  @Benchmark
  public Look firstPicture() {
    Strands fallen = fall();
    return Look.at(fallen, Dye.before(fallen.roots(), Length.ZERO), studio, front, Watch.NOBODY);
  }
}
