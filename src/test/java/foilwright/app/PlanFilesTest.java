package foilwright.app;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.networknt.schema.Error;
import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import foilwright.document.Documents;
import foilwright.placement.PlacedFoil;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TimeZone;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class PlanFilesTest {
  private static final Schema SCHEMA =
      SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
          .getSchema(Documents.schema("plan"));

  @TempDir Path folder;

  private Plan plan(PlanRequest request) {
    PlanOutcome outcome = Planning.plan(Workspace.in(folder), request, step -> {});
    return outcome.plan().orElseThrow(() -> new AssertionError(outcome.problems().toString()));
  }

  private static String json(Plan plan) {
    return new String(PlanFiles.json(plan), StandardCharsets.UTF_8);
  }

  private static List<Error> faults(String json) {
    return SCHEMA.validate(json, InputFormat.JSON);
  }

  @Test
  void everyPlanKeepsToTheSchema() {
    for (PlanRequest request :
        List.of(
            PlanRequest.of("dark-rim"),
            PlanRequest.of("dark-rim").withGuest("guest-07"),
            PlanRequest.of("teaching-board").withGuest("guest-12").withPace("apprentice"),
            PlanRequest.of("full-head-fine-weave").withGuest("guest-30"))) {
      assertEquals(List.of(), faults(json(plan(request))), request.toString());
    }
  }

  /** The schema refuses what no plan may say, so that keeping to it means something. */
  @Test
  void theSchemaIsStrict() {
    String json = json(plan(PlanRequest.of("fringe-veil")));
    for (Map.Entry<String, String> change :
        Map.of(
                "\"format\": \"foilwright plan 1\"", "\"format\": \"foilwright plan 2\"",
                "\"scalpAreaMm2\"", "\"scalpArea\"",
                "\"number\": 1,", "\"number\": \"1\",",
                "\"part\": \"none\"", "\"part\": \"middle\"",
                "\"cautions\": [", "\"cautionsOf\": [")
            .entrySet()) {
      assertTrue(json.contains(change.getKey()), change.getKey());
      assertFalse(
          faults(json.replace(change.getKey(), change.getValue())).isEmpty(), change.getKey());
    }
  }

  @Test
  void theSameRequestGivesTheSameBytesInAnyLocaleAndZone() {
    PlanRequest request = PlanRequest.of("v-back").withGuest("guest-07");
    byte[] json = PlanFiles.json(plan(request));
    byte[] csv = PlanFiles.csv(plan(request));
    Locale locale = Locale.getDefault();
    TimeZone zone = TimeZone.getDefault();
    try {
      Locale.setDefault(Locale.forLanguageTag("ar-EG-u-nu-arab"));
      TimeZone.setDefault(TimeZone.getTimeZone("Pacific/Chatham"));
      assertArrayEquals(json, PlanFiles.json(plan(request)));
      assertArrayEquals(csv, PlanFiles.csv(plan(request)));
    } finally {
      Locale.setDefault(locale);
      TimeZone.setDefault(zone);
    }
  }

  @Test
  void theTableHasARowForEachFoilAndEveryKeyAsAColumn() {
    Plan plan = plan(PlanRequest.of("dark-rim").withGuest("guest-07"));
    List<String> lines = new String(PlanFiles.csv(plan), StandardCharsets.UTF_8).lines().toList();
    assertEquals(plan.totals().foils() + 1, lines.size());
    assertEquals(String.join(",", PlanFiles.COLUMNS), lines.get(0));
    Set<String> keys = new HashSet<>();
    Map<Integer, FoilClock> clocks = FoilClock.byNumber(plan);
    for (int i = 0; i < plan.totals().foils(); i++) {
      PlacedFoil foil = plan.placement().foils().get(i);
      keys.addAll(PlanFiles.cells(PlanTree.foil(plan, i, clocks)).keySet());
      assertTrue(lines.get(i + 1).startsWith((i + 1) + "," + foil.section() + ","));
    }
    assertTrue(keys.contains("lowerEnd"));
    assertEquals(Set.copyOf(PlanFiles.COLUMNS), keys);
  }

  @Test
  void cellsWithCommasAndQuotesAreQuoted() throws Exception {
    Files.createDirectories(folder.resolve("patterns"));
    String text =
        Files.readString(Path.of("patterns/fringe-veil.json"))
            .replaceFirst("\"name\": \"[^\"]+\"", "\"name\": \"veil, \\\\\"first\\\\\"\"");
    Files.writeString(folder.resolve("patterns/mine.json"), text);
    String table = new String(PlanFiles.csv(plan(PlanRequest.of("mine"))), StandardCharsets.UTF_8);
    assertTrue(table.contains("\r\n1,\"veil, \"\"first\"\"\","), table.substring(0, 900));
  }
}
