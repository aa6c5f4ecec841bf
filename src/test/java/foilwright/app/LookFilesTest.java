package foilwright.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.networknt.schema.Error;
import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import foilwright.anatomy.Zone;
import foilwright.document.Documents;
import foilwright.hair.Level;
import foilwright.look.HairColours;
import foilwright.look.Tone;
import foilwright.pattern.MixSlot;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is written of looks keeps to its schema; what is told follows from the plan. */
class LookFilesTest {
  private static final Schema SCHEMA =
      SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
          .getSchema(Documents.schema("look"));

  @TempDir static Path folder;

  private static Workspace workspace;

  @BeforeAll
  static void open() {
    workspace = Workspace.in(folder);
  }

  private static Plan plan(String pattern, String guest) {
    return Planning.plan(workspace, PlanRequest.of(pattern).withGuest(guest), step -> {})
        .plan()
        .orElseThrow();
  }

  private LookedPlan looked(String pattern, String guest, double months) {
    LookRequest request =
        LookRequest.of(PlanRequest.of(pattern).withGuest(guest))
            .withHairs(4000)
            .withHeight(100)
            .withMonths(months);
    return Looking.look(workspace, request, step -> {}).looked().orElseThrow();
  }

  private static List<Error> faults(byte[] json) {
    return SCHEMA.validate(new String(json, StandardCharsets.UTF_8), InputFormat.JSON);
  }

  @Test
  void everyPatternKeepsToTheSchemaOnSomeGuest() {
    List<String> guests = List.copyOf(Workspace.shippedNames(DocumentKind.GUEST));
    int turn = 0;
    for (String pattern : Workspace.shippedNames(DocumentKind.PATTERN)) {
      LookedPlan looked = looked(pattern, guests.get(turn % guests.size()), turn % 2 * 3);
      turn++;
      assertEquals(List.of(), faults(PlanFiles.json(looked)), pattern);
      assertTrue(looked.advice().size() >= 2 && looked.advice().size() <= 6, pattern);
      looked
          .advice()
          .forEach(a -> assertTrue(a.text().matches(".*\\d.*"), "no number: " + a.text()));
    }
  }

  @Test
  void comparisonsKeepToTheSchemaAndTheSchemaIsStrict() {
    LookComparison comparison =
        LookComparison.of(looked("dark-rim", "guest-18", 0), looked("v-back", "guest-18", 0));
    byte[] json = PlanFiles.json(comparison);
    assertEquals(List.of(), faults(json));
    String text = new String(json, StandardCharsets.UTF_8);
    for (String[] change :
        new String[][] {
          {"foilwright comparison 1", "foilwright comparison 2"},
          {"\"differences\"", "\"difference\""},
          {"\"visibleShare\"", "\"visible\""},
          {"\"foilsByWorth\"", "\"foils\""}
        }) {
      assertTrue(text.contains(change[0]), change[0]);
      String changed = text.replace(change[0], change[1]);
      assertFalse(
          faults(changed.getBytes(StandardCharsets.UTF_8)).isEmpty(), "accepted " + change[1]);
    }
    double difference =
        comparison.other().plan().totals().foils() - comparison.one().plan().totals().foils();
    assertEquals(difference, comparison.rows().get(0).difference());
    assertTrue(comparison.sentences().get(0).contains(comparison.rows().get(0).otherWords()));
  }

  /**
   * Guest-07 is level 6, at the nape 5, and wishes for 9: entry 1 lifts 4 levels, entry 3 three.
   */
  @Test
  void coloursFollowLevelZoneAndWish() {
    Plan plan = plan("fringe-veil", "guest-07");
    HairColours colours = Looking.colours(plan, Tone.COOL);
    assertEquals(new Level(6), colours.natural().get(Zone.CROWN));
    assertEquals(new Level(5), colours.natural().get(Zone.NAPE_LEFT));
    assertEquals(new Level(9), colours.slots().get(MixSlot.A).get(Zone.CROWN));
    assertEquals(new Level(9), colours.slots().get(MixSlot.A).get(Zone.NAPE_LEFT));
    assertEquals(new Level(8), colours.slots().get(MixSlot.C).get(Zone.NAPE_LEFT));
    assertEquals(new Level(4), colours.slots().get(MixSlot.B).get(Zone.CROWN));
    assertFalse(colours.lightening().contains(MixSlot.B));
    // Guest-21 is level 3 and wishes for 9, which is more than the 4 levels of one visit.
    HairColours dark = Looking.colours(plan("v-back", "guest-21"), Tone.COOL);
    assertEquals(new Level(7), dark.slots().get(MixSlot.A).get(Zone.CROWN));
  }
}
