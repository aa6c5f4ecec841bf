package foilwright.app;

import foilwright.document.Documents;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** A plan as text for other programs, in UTF-8. */
public final class PlanFiles {
  private static final List<String> AXES = List.of("X", "Y", "Z");

  /** Columns of the table: the keys of a foil in the JSON, those of a group joined to its own. */
  static final List<String> COLUMNS =
      List.of(
          "number",
          "section",
          "row",
          "inRow",
          "side",
          "zone",
          "shape",
          "mix",
          "partingAngleDeg",
          "lowerEnd",
          "widthMm",
          "sliceMm",
          "sliceAtStartMm",
          "sliceAtEndMm",
          "backgroundMm",
          "areaMm2",
          "pickedShare",
          "picks",
          "hairs",
          "pickedHairs",
          "hairGrams",
          "hairLengthMm",
          "startFromScalpMm",
          "placingMinutes",
          "mixGrams",
          "bowl",
          "clockVisit",
          "clockBeginMinutes",
          "clockInMinutes",
          "clockDueFromMinutes",
          "clockOutByMinutes",
          "clockOutMinutes",
          "clockExposureMinutes",
          "findFromHairlineMm",
          "findFromCentreMm",
          "findWords",
          "findStartFromHairlineMm",
          "findStartFromCentreMm",
          "findStartWords",
          "findEndFromHairlineMm",
          "findEndFromCentreMm",
          "findEndWords",
          "centreXMm",
          "centreYMm",
          "centreZMm");

  private PlanFiles() {}

  /** The whole plan as JSON of the format {@code foilwright plan 1}, whose schema ships with it. */
  public static byte[] json(Plan plan) {
    return Documents.write(PlanTree.of(plan));
  }

  /** The figures of a look as JSON of the format {@code foilwright look 1}. */
  public static byte[] json(LookedPlan looked) {
    return Documents.write(LookTree.of(looked));
  }

  /** Two looks and their differences as JSON of the format {@code foilwright comparison 1}. */
  public static byte[] json(LookComparison comparison) {
    return Documents.write(LookTree.of(comparison));
  }

  /**
   * A table with a row for each foil in working order, under a row of column names; commas between
   * cells and quotes as RFC 4180 says.
   */
  public static byte[] csv(Plan plan) {
    StringBuilder table = new StringBuilder();
    appendRow(COLUMNS, table);
    Map<Integer, FoilClock> clocks = FoilClock.byNumber(plan);
    for (int i = 0; i < plan.placement().foils().size(); i++) {
      Map<String, String> cells = cells(PlanTree.foil(plan, i, clocks));
      appendRow(COLUMNS.stream().map(name -> cells.getOrDefault(name, "")).toList(), table);
    }
    return table.toString().getBytes(StandardCharsets.UTF_8);
  }

  /** The values of a foil by column. */
  static Map<String, String> cells(Map<String, Object> foil) {
    Map<String, String> cells = new LinkedHashMap<>();
    foil.forEach(
        (key, value) -> {
          if (value instanceof Map<?, ?> group) {
            group.forEach((inner, v) -> cells.put(key + capital((String) inner), text(v)));
          } else if (value instanceof List<?> point) {
            for (int i = 0; i < point.size(); i++) {
              cells.put(key.replace("Mm", AXES.get(i) + "Mm"), text(point.get(i)));
            }
          } else {
            cells.put(key, text(value));
          }
        });
    return cells;
  }

  private static String capital(String key) {
    return key.substring(0, 1).toUpperCase(Locale.ROOT) + key.substring(1);
  }

  private static String text(Object value) {
    return value instanceof BigDecimal number ? number.toPlainString() : value.toString();
  }

  private static void appendRow(List<String> cells, StringBuilder table) {
    List<String> quoted = new ArrayList<>();
    for (String cell : cells) {
      boolean plain = cell.chars().noneMatch(c -> c == ',' || c == '"' || c == '\n' || c == '\r');
      quoted.add(plain ? cell : '"' + cell.replace("\"", "\"\"") + '"');
    }
    table.append(String.join(",", quoted)).append("\r\n");
  }
}
