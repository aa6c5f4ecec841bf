package foilwright.web;

import foilwright.anatomy.Landmark;
import foilwright.anatomy.Zone;
import foilwright.app.DocumentKind;
import foilwright.app.Draft;
import foilwright.pattern.Background;
import foilwright.pattern.CentreStart;
import foilwright.pattern.HaloBoundary;
import foilwright.pattern.HeightLandmark;
import foilwright.pattern.LowerEnd;
import foilwright.pattern.RegionSide;
import foilwright.pattern.Remainder;
import foilwright.pattern.SectionShape;
import foilwright.pattern.ShortEnds;
import foilwright.pattern.TravelFrom;
import foilwright.pattern.ViewedFrom;
import foilwright.pattern.WideEnd;
import foilwright.pattern.WorkingOrder;
import foilwright.pattern.ZoneGroup;
import foilwright.units.Length;
import foilwright.web.FormField.Choice;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeSet;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * All of a pattern that can be changed on the page beyond the few fields of a card: what it is
 * called, its sections and their order, and everything that a section says.
 */
final class PatternForm {
  /** Words of the shapes, as documents write them. */
  static final List<String> SHAPES =
      List.of(
          "horizontal",
          "diagonal",
          "vertical",
          "V",
          "halo",
          "pivot",
          "across the fall",
          "along the fall");

  private static final List<String> ZONES = Arrays.stream(Zone.values()).map(Zone::words).toList();
  private static final int MOST_FOILS = 12;
  private static final String ALONG = " along the centre line from the ";
  private static final String ELEVATION = " of normal elevation";

  private final Draft draft;
  private final Form form;
  private final List<String> names = new ArrayList<>();

  private PatternForm(Draft draft, LengthUnit unit) {
    this.draft = draft;
    form = new Form(draft, unit);
    for (int i = 0; i < draft.count("sections"); i++) {
      names.add(draft.text("sections[" + i + "].name"));
    }
  }

  /** The form of a pattern: its own group first, then the groups of each section in turn. */
  static Form of(Draft draft, LengthUnit unit) {
    PatternForm pattern = new PatternForm(draft, unit);
    pattern.general();
    for (int i = 0; i < pattern.names.size(); i++) {
      pattern.section(i);
    }
    return pattern.form;
  }

  /** Whether a group belongs to a section of that index. */
  static boolean belongs(FormGroup group, int section) {
    return group.id().startsWith("section-" + section + "-");
  }

  /** Words that say where a new section lies. */
  static List<String> places() {
    return Stream.of(
            Arrays.stream(ZoneGroup.values()).filter(g -> g != ZoneGroup.ALL).map(ZoneGroup::words),
            ZONES.stream(),
            Stream.of("whole scalp"))
        .flatMap(each -> each)
        .toList();
  }

  private static List<String> words(Stream<String> words) {
    return words.toList();
  }

  private void general() {
    form.group("pattern-general", "The pattern", "")
        .text("title", "Title", "")
        .text("summary", "What it is for", "a sentence or two; may be empty")
        .choice(
            "order",
            "Order of placing",
            WorkingOrder.SECTION_BY_SECTION.words(),
            words(Arrays.stream(WorkingOrder.values()).map(WorkingOrder::words)));
  }

  // Sections as a whole.

  /** A section of a shape at a place, with a usual fill. */
  static Draft added(Draft draft, String shape, String place) {
    if (!SHAPES.contains(shape) || !places().contains(place)) {
      throw new IllegalArgumentException("choose a shape and a place");
    }
    Map<String, Object> section = new LinkedHashMap<>();
    section.put("name", freeName(draft, place));
    if (!place.equals("whole scalp")) {
      section.put("region", Map.of("zones", place));
    }
    section.put("shape", shape(shape));
    if (shape.equals("diagonal")) {
      section.put("shape", Map.of(shape, Map.of("angle", "30 deg", "lowerEnd", lowerEnd(place))));
    }
    if (!ownStart(shape)) {
      section.put("from", from(shape));
    }
    Map<String, Object> fill = usualFill();
    if (shape.endsWith("the fall")) {
      // Hair that falls every way gives partings in pieces; a person begins with a few.
      fill.put("slices", new BigDecimal(4));
    }
    section.put("fill", fill);
    return draft.inserted("sections", draft.count("sections"), section);
  }

  /** A pattern with a title and one section. */
  static Draft begun(String title, String shape) {
    Draft empty =
        Draft.of(
                DocumentKind.PATTERN,
                "{\"format\": \"foilwright pattern 1\"}".getBytes(StandardCharsets.UTF_8))
            .orElseThrow();
    return added(empty.with("title", title), shape, "whole scalp");
  }

  private static Map<String, Object> usualFill() {
    Map<String, Object> fill = new LinkedHashMap<>();
    fill.put("slice", "6 mm");
    fill.put("background", "20 mm");
    fill.put("picks", Map.of("weave", Map.of("pick", "4 mm", "gap", "4 mm")));
    fill.put("foils", "evenly");
    fill.put("mix", "A");
    return fill;
  }

  /** An end that can be told from where one looks at that place. */
  private static String lowerEnd(String place) {
    if (place.startsWith("front side")) {
      return LowerEnd.BACK.words();
    }
    boolean half = place.endsWith("left") || place.endsWith("right");
    return (half ? LowerEnd.CENTRE : LowerEnd.CLIENTS_LEFT).words();
  }

  private static boolean ownStart(String shape) {
    return shape.equals("halo") || shape.equals("pivot");
  }

  private static String from(String shape) {
    return switch (shape) {
      case "vertical", "along the fall" -> TravelFrom.CENTRE.words();
      default -> TravelFrom.BOTTOM.words();
    };
  }

  private static Object shape(String shape) {
    return switch (shape) {
      case "diagonal" -> Map.of("diagonal", Map.of("angle", "30 deg", "lowerEnd", "back"));
      case "V" -> Map.of("V", Map.of("angle", "30 deg", "apex", "down"));
      case "halo" -> Map.of("halo", Map.of("measuredFrom", "hairline", "from", "30 mm"));
      case "pivot" ->
          Map.of(
              "pivot",
              Map.of(
                  "point", "apex", "fromAngle", "95 deg", "toAngle", "265 deg", "radius", "55 mm"));
      default -> shape;
    };
  }

  private static String freeName(Draft draft, String wanted) {
    TreeSet<String> taken = new TreeSet<>();
    for (int i = 0; i < draft.count("sections"); i++) {
      taken.add(draft.text("sections[" + i + "].name"));
    }
    String name = wanted;
    for (int i = 2; taken.contains(name); i++) {
      name = wanted + " " + i;
    }
    return name;
  }

  private static Draft copied(Draft draft, int section) {
    String path = "sections[" + section + "]";
    Draft copy = draft.inserted("sections", section + 1, draft.find(path).orElseThrow());
    String name = draft.text(path + ".name");
    return copy.with("sections[" + (section + 1) + "].name", freeName(draft, name));
  }

  /** Renames a section and every reference to it. */
  private static Draft renamed(Draft draft, int section, String name) {
    String old = draft.text("sections[" + section + "].name");
    Draft now = draft.with("sections[" + section + "].name", name);
    if (old.isEmpty() || name.isEmpty()) {
      return now;
    }
    for (int i = 0; i < draft.count("sections"); i++) {
      String path = "sections[" + i + "].";
      for (String key : List.of("above", "below", "between", "inside", "except")) {
        List<String> texts = draft.texts(path + "region." + key);
        List<Object> changed = new ArrayList<>();
        texts.forEach(text -> changed.add(renamed(text, old, name)));
        if (!changed.equals(new ArrayList<Object>(texts))) {
          boolean one = changed.size() == 1;
          now = now.with(path + "region." + key, one ? changed.get(0) : changed);
        }
      }
      String measured = path + "shape.halo.measuredFrom";
      if (draft.text(measured).equals("inner edge of " + old)) {
        now = now.with(measured, "inner edge of " + name);
      }
    }
    return now;
  }

  private static String renamed(String text, String old, String name) {
    for (String before : List.of("", "start of ", "end of ")) {
      if (text.equals(before + old)) {
        return before + name;
      }
    }
    return text;
  }

  // One section.

  private void section(int i) {
    String s = "sections[" + i + "].";
    List<String> others = new ArrayList<>(names);
    others.remove(i);
    form.group("section-" + i + "-name", "Name and place in the order", "");
    form.field(
        new FormField(
            s + "name",
            FormField.Look.TYPED,
            "Name",
            names.get(i),
            "",
            "",
            "other sections that refer to it follow",
            List.of(),
            "",
            ""),
        (d, text) -> renamed(d, i, text));
    form.text(s + "why", "Why", "what it does for the look; may be empty");
    if (i > 0) {
      form.act("up " + i, "Move up", d -> d.moved("sections", i, i - 1));
    }
    if (i + 1 < names.size()) {
      form.act("down " + i, "Move down", d -> d.moved("sections", i, i + 1));
    }
    form.act("copy " + i, "Duplicate", d -> copied(d, i));
    if (names.size() > 1) {
      form.act("remove " + i, "Remove", d -> d.without("sections[" + i + "]"));
    }
    where(i, s, others);
    shape(i, s);
    slices(i, s);
    picks(i, s);
    foils(i, s);
  }

  private void where(int i, String s, List<String> others) {
    String r = s + "region.";
    form.group("section-" + i + "-where", "Where it lies", "")
        .several(r + "zones", "Zones", ZONES, "none: the whole scalp")
        .choice(
            r + "side",
            "Side",
            RegionSide.BOTH.words(),
            words(Arrays.stream(RegionSide.values()).map(RegionSide::words)))
        .yesNo(s + "mirror", "The same on the other side")
        .length(r + "insetFromPart", "Inset from part", "empty: none");
    heights(r + "above", "Above", others);
    heights(r + "below", "Below", others);
    form.choice(
        r + "ear line",
        "Ear line",
        !draft.text(r + "inFrontOf").isEmpty()
            ? "front"
            : draft.text(r + "behind").isEmpty() ? "" : "behind",
        "",
        List.of(
            new Choice("", "on both sides of it"),
            new Choice("front", "in front of it"),
            new Choice("behind", "behind it")),
        (d, text) -> {
          Draft none = d.without(r + "inFrontOf").without(r + "behind");
          return text.isEmpty()
              ? none
              : none.with(r + (text.equals("front") ? "inFrontOf" : "behind"), "ear line");
        });
    area(r);
    form.several(r + "except", "Not where these lie", others, "")
        .choice(r + "inside", "Farther from the hairline than", "no section", others);
    List<String> between = draft.texts(r + "between");
    for (int end = 0; end < 2; end++) {
      int at = end;
      String now = between.size() == 2 ? between.get(end) : "";
      form.choice(
          r + "between " + end,
          end == 0 ? "Between this section" : "and this one",
          now,
          "",
          Stream.concat(Stream.of(new Choice("", "no section")), others.stream().map(Choice::of))
              .toList(),
          (d, text) -> between(d, r, others, at, text));
    }
  }

  private static Draft between(Draft d, String r, List<String> others, int end, String text) {
    if (text.isEmpty()) {
      return d.without(r + "between");
    }
    List<String> both = new ArrayList<>(d.texts(r + "between"));
    if (both.size() != 2) {
      String other = others.stream().filter(n -> !n.equals(text)).findFirst().orElse(text);
      both = new ArrayList<>(List.of(other, other));
    }
    both.set(end, text);
    return d.with(r + "between", both);
  }

  private void heights(String path, String label, List<String> others) {
    List<String> bounds = draft.texts(path);
    int shown = Math.min(2, bounds.size() + 1);
    for (int k = 0; k < shown; k++) {
      height(path, k, k == 0 ? label : "and " + label.toLowerCase(Locale.ROOT), others);
    }
  }

  private void height(String path, int k, String label, List<String> others) {
    List<String> bounds = draft.texts(path);
    String text = k < bounds.size() ? bounds.get(k) : "";
    int along = text.indexOf(ALONG);
    String kind =
        along > 0
            ? "along " + text.substring(along + ALONG.length())
            : text.endsWith(ELEVATION) ? "elevation" : text;
    List<Choice> choices = new ArrayList<>();
    choices.add(new Choice("", "no bound"));
    for (HeightLandmark mark : HeightLandmark.values()) {
      choices.add(new Choice(mark.words(), "the " + mark.words()));
    }
    choices.add(new Choice("elevation", "where the scalp has a slope"));
    for (CentreStart start : CentreStart.values()) {
      choices.add(new Choice("along " + start.words(), "a distance from the " + start.words()));
    }
    for (String other : others) {
      choices.add(new Choice("start of " + other, "the start of " + other));
      choices.add(new Choice("end of " + other, "the end of " + other));
    }
    form.choice(
        path + " " + k, label, kind, "", choices, (d, word) -> bound(d, path, k, bound(word)));
    if (kind.equals("elevation")) {
      form.field(
          new FormField(
              path + " slope " + k,
              FormField.Look.TYPED,
              label + ": slope",
              text.substring(0, text.indexOf(" ")),
              "\u00b0",
              "1",
              "0 upright, 90 level on top",
              List.of(),
              "",
              ""),
          (d, typed) ->
              bound(d, path, k, typed.replace("\u00b0", "").strip() + " deg" + ELEVATION));
    } else if (along > 0) {
      String amount = text.substring(0, along);
      boolean share = amount.contains(" of ");
      form.field(
          new FormField(
              path + " distance " + k,
              FormField.Look.TYPED,
              label + ": distance",
              share ? amount : form.unit().number(Length.parse(amount)),
              share ? "" : form.unit().word(),
              share ? "" : form.unit().step(),
              share ? "share of the head; a length may stand here too" : "",
              List.of(),
              "",
              ""),
          (d, typed) ->
              bound(
                  d,
                  path,
                  k,
                  (typed.contains(" of ") ? typed : form.unit().withUnit(typed))
                      + text.substring(along)));
    }
  }

  private static String bound(String word) {
    if (word.equals("elevation")) {
      return "45 deg" + ELEVATION;
    }
    return word.startsWith("along ") ? "80 mm" + ALONG + word.substring(6) : word;
  }

  private static Draft bound(Draft d, String path, int k, String text) {
    List<Object> bounds = new ArrayList<>(d.texts(path));
    if (text.isEmpty()) {
      if (k < bounds.size()) {
        bounds.remove(k);
      }
    } else if (k < bounds.size()) {
      bounds.set(k, text);
    } else {
      bounds.add(text);
    }
    return bounds.isEmpty()
        ? d.without(path)
        : d.with(path, bounds.size() == 1 ? bounds.get(0) : bounds);
  }

  private static final Map<String, Map<String, String>> AREAS =
      Map.of(
          "triangle", Map.of("base", "80 mm", "depth", "60 mm"),
          "diamond", Map.of("centre", "120 mm", "length", "100 mm", "width", "80 mm"),
          "box", Map.of("from", "0 mm", "to", "60 mm", "width", "100 mm"),
          "horseshoe", Map.of("depth", "120 mm"),
          "faceFrameStrip", Map.of("width", "20 mm"),
          "partLineStrip", Map.of("width", "20 mm"));

  private void area(String r) {
    String within = r + "within";
    String kind = draft.keys(within).stream().findFirst().orElse("");
    form.choice(
        within,
        "Within a shape",
        kind,
        "",
        List.of(
            new Choice("", "no shape"),
            new Choice("triangle", "a triangle on the front hairline"),
            new Choice("diamond", "a diamond on the centre line"),
            new Choice("box", "a box over the centre line"),
            new Choice("horseshoe", "a horseshoe, open to the front"),
            new Choice("faceFrameStrip", "a strip along the front hairline"),
            new Choice("partLineStrip", "a strip along the part")),
        (d, text) ->
            text.isEmpty() ? d.without(within) : d.with(within, Map.of(text, AREAS.get(text))));
    String a = within + "." + kind + ".";
    switch (kind) {
      case "triangle" ->
          form.length(a + "base", "Triangle: base", "").length(a + "depth", "Triangle: depth", "");
      case "diamond" ->
          form.length(a + "centre", "Diamond: centre from the front hairline", "")
              .length(a + "length", "Diamond: length", "")
              .length(a + "width", "Diamond: width", "");
      case "box" ->
          form.length(a + "from", "Box: from the front hairline", "")
              .length(a + "to", "Box: to", "")
              .length(a + "width", "Box: width", "");
      case "horseshoe" ->
          form.length(a + "depth", "Horseshoe: depth", "")
              .length(a + "width", "Horseshoe: width", "empty: out to the parietal ridge");
      case "faceFrameStrip", "partLineStrip" -> form.length(a + "width", "Strip: width", "");
      default -> {
        // No shape, no sizes.
      }
    }
  }

  // Shape and direction.

  private void shape(int i, String s) {
    String path = s + "shape";
    String kind = draft.keys(path).stream().findFirst().orElseGet(() -> draft.text(path));
    form.group("section-" + i + "-shape", "Shape and direction", "");
    form.choice(
        path,
        "Section shape",
        kind,
        "",
        SHAPES.stream().map(Choice::of).toList(),
        (d, text) -> reshaped(d, s, text));
    switch (kind) {
      case "V" ->
          form.choice(
                  path + ".V.apex",
                  "The point of the V is",
                  "",
                  words(Arrays.stream(SectionShape.Apex.values()).map(SectionShape.Apex::words)))
              .choice(
                  path + ".V.meetsOn",
                  "The arms meet on the",
                  SectionShape.MeetingLine.CENTRE_LINE.words(),
                  words(
                      Arrays.stream(SectionShape.MeetingLine.values())
                          .map(SectionShape.MeetingLine::words)));
      case "halo" -> halo(path + ".halo.", i);
      case "pivot" -> pivot(path + ".pivot.");
      default -> {
        // Angle and lower end of a diagonal stand on the card.
      }
    }
    form.choice(
            s + "from",
            "Work starts at",
            ownStart(kind) ? "the shape's own start" : "",
            words(
                Arrays.stream(TravelFrom.values())
                    .filter(f -> f != TravelFrom.START)
                    .map(TravelFrom::words)))
        .choice(
            s + "seen",
            "Looked at",
            ViewedFrom.AUTO.words(),
            words(Arrays.stream(ViewedFrom.values()).map(ViewedFrom::words)))
        .quantity(s + "turned", "Turned by", "deg", "1", "-90 to 90; empty: not turned")
        .length(
            s + "zigzagParting.toothDepth",
            "Zigzag parting: teeth deep",
            "empty: straight partings",
            (d, text) -> tooth(d, s, "toothDepth", "toothWidth", text))
        .length(
            s + "zigzagParting.toothWidth",
            "Zigzag parting: teeth wide",
            "empty: straight partings",
            (d, text) -> tooth(d, s, "toothWidth", "toothDepth", text));
  }

  private static Draft tooth(Draft d, String s, String key, String other, String text) {
    String path = s + "zigzagParting.";
    if (text.isEmpty()) {
      return d.without(s + "zigzagParting");
    }
    Draft now = d.with(path + key, text);
    return now.text(path + other).isEmpty() ? now.with(path + other, text) : now;
  }

  private static Draft reshaped(Draft d, String s, String shape) {
    Draft now = d.with(s + "shape", shape(shape));
    if (ownStart(shape)) {
      return now.without(s + "from");
    }
    return now.text(s + "from").isEmpty() ? now.with(s + "from", from(shape)) : now;
  }

  private void halo(String h, int i) {
    List<Choice> lines = new ArrayList<>();
    for (HaloBoundary.HeadLine line : HaloBoundary.HeadLine.values()) {
      lines.add(new Choice(line.words(), "the " + line.words()));
    }
    for (int k = 0; k < names.size(); k++) {
      if (k != i) {
        lines.add(new Choice("inner edge of " + names.get(k), "the inner edge of " + names.get(k)));
      }
    }
    form.choice(
            h + "measuredFrom",
            "Measured from",
            draft.text(h + "measuredFrom"),
            "",
            lines,
            (d, text) -> d.with(h + "measuredFrom", text))
        .length(h + "from", "Halo begins at", "distance from that line; empty: at the line")
        .length(h + "to", "Halo ends at", "empty: as far as the region goes");
  }

  private void pivot(String p) {
    String text = draft.text(p + "point");
    int along = text.indexOf(ALONG);
    String rest = along < 0 ? "" : text.substring(along + ALONG.length());
    int comma = rest.indexOf(", ");
    String start = comma < 0 ? rest : rest.substring(0, comma);
    List<Choice> points = new ArrayList<>();
    for (Landmark mark : Landmark.values()) {
      points.add(new Choice(mark.words(), "the " + mark.words()));
    }
    for (CentreStart from : CentreStart.values()) {
      points.add(new Choice("along " + from.words(), "a distance from the " + from.words()));
    }
    form.choice(
        p + "point",
        "Partings meet at",
        along < 0 ? text : "along " + start,
        "",
        points,
        (d, word) ->
            d.with(
                p + "point",
                word.startsWith("along ") ? "100 mm" + ALONG + word.substring(6) : word));
    if (along >= 0) {
      String amount = text.substring(0, along);
      form.field(
          lengthField(p + "point distance", "Meeting point: distance", amount, ""),
          (d, typed) -> d.with(p + "point", amount(typed) + text.substring(along)));
      String aside = comma < 0 ? "" : rest.substring(comma + 2, rest.indexOf(" to the "));
      String side = comma < 0 ? "left" : rest.substring(rest.indexOf(" to the ") + 8);
      form.field(
          lengthField(
              p + "point aside", "Meeting point: aside", aside, "empty: on the centre line"),
          (d, typed) ->
              d.with(
                  p + "point",
                  amount
                      + ALONG
                      + start
                      + (typed.isEmpty() ? "" : ", " + amount(typed) + " to the " + side)));
      if (comma >= 0) {
        form.choice(
            p + "point side",
            "Meeting point: to the",
            side,
            "",
            List.of(Choice.of("left"), Choice.of("right")),
            (d, typed) ->
                d.with(p + "point", amount + ALONG + start + ", " + aside + " to the " + typed));
      }
    }
    form.quantity(
            p + "fromAngle",
            "First parting",
            "deg",
            "5",
            "0 to the face, 90 to the client's right, 180 to the back")
        .quantity(p + "toAngle", "Last parting", "deg", "5", "at most a full turn on")
        .length(p + "radius", "Slices are measured at", "distance from the meeting point")
        .choice(
            p + "axis",
            "Turned about",
            SectionShape.Axis.SURFACE_NORMAL.words(),
            words(Arrays.stream(SectionShape.Axis.values()).map(SectionShape.Axis::words)));
  }

  private String amount(String typed) {
    return typed.contains(" of ") ? typed : form.unit().withUnit(typed);
  }

  private FormField lengthField(String key, String label, String value, String hint) {
    boolean plain = !value.isEmpty() && !value.contains(" of ");
    return new FormField(
        key,
        FormField.Look.TYPED,
        label,
        plain ? form.unit().number(Length.parse(value)) : value,
        value.contains(" of ") ? "" : form.unit().word(),
        value.contains(" of ") ? "" : form.unit().step(),
        hint,
        List.of(),
        "",
        "");
  }

  // Slices and backgrounds.

  private void slices(int i, String s) {
    String f = s + "fill.";
    form.group("section-" + i + "-slices", "Slices and background", "");
    changing(f + "slice", "Slice changes to");
    String b = f + "background";
    boolean wedge = !draft.text(b + ".wedge").isEmpty();
    boolean none = draft.text(b).equals("none");
    form.choice(
        b,
        "Kind of background",
        wedge ? "wedge" : none ? "none" : "even",
        "",
        List.of(
            new Choice("even", "the same width all along"),
            new Choice("wedge", "closing to a point at one end"),
            new Choice("none", "none, back-to-back")),
        (d, text) -> background(d, b, text));
    if (wedge) {
      form.choice(
              b + ".wideEnd",
              "Wide end",
              "",
              words(Arrays.stream(WideEnd.values()).map(WideEnd::words)))
          .choice(
              b + ".points",
              "Points lie at",
              "",
              words(Arrays.stream(Background.Points.values()).map(Background.Points::words)));
      changing(b + ".wedge", "Background changes to");
    } else if (!none) {
      changing(b, "Background changes to");
    }
    form.choice(
            f + "remainder",
            "What is left over",
            Remainder.LEAVE.words(),
            words(Arrays.stream(Remainder.values()).map(Remainder::words)))
        .yesNo(s + "brickLay", "Every second row shifted by half a foil")
        .length(s + "keptCover.atHairline", "Kept cover at the hairline", "empty: none")
        .length(s + "keptCover.atPart", "Kept cover at the part", "empty: none")
        .length(s + "keptCover.overFringe", "Kept cover over the fringe", "empty: none");
  }

  private static Draft background(Draft d, String b, String kind) {
    String width = d.text(b + ".wedge").isEmpty() ? d.text(b) : d.text(b + ".wedge");
    String kept = width.isEmpty() || width.equals("none") ? "20 mm" : width;
    return switch (kind) {
      case "none" -> d.with(b, "none");
      case "wedge" -> d.with(b, Map.of("wedge", kept, "wideEnd", "ear", "points", "same end"));
      default -> d.with(b, kept);
    };
  }

  /** The last of a run of widths, offered where all are alike; else the card has it. */
  private void changing(String path, String label) {
    String text = draft.text(path);
    if (!text.contains(" to ")) {
      form.field(
          lengthField(path + " last", label, "", "from first to last; empty: all alike"),
          (d, typed) -> typed.isEmpty() ? d : d.with(path, d.text(path) + " to " + amount(typed)));
    }
  }

  // Picks and foils.

  private void picks(int i, String s) {
    String path = s + "fill.picks";
    boolean list = draft.find(path).filter(List.class::isInstance).isPresent();
    int count = draft.count(path);
    form.group(
        "section-" + i + "-picks",
        "Picks",
        "A zigzag and then a weave may be made one after the other.");
    for (int k = 0; k < count; k++) {
      int at = k;
      String p = list ? path + "[" + k + "]" : path;
      String which = count > 1 ? "Pick " + (k + 1) : "Pick";
      String kind = draft.keys(p).stream().findFirst().orElse("solid");
      form.choice(
          p,
          which,
          kind,
          "",
          List.of(
              Choice.of("weave"), Choice.of("zigzag"), new Choice("solid", "solid, every hair")),
          (d, text) -> d.with(p, pick(text)));
      if (!kind.equals("solid")) {
        String inner = p + "." + kind + ".";
        form.length(
                inner + (kind.equals("weave") ? "pick" : "tooth"),
                which + ": taken",
                "width along the parting")
            .length(inner + "gap", which + ": left out", "width along the parting")
            .field(
                depthField(inner + "depth", which + ": depth"),
                (d, text) ->
                    text.isEmpty()
                        ? d.without(inner + "depth")
                        : d.with(inner + "depth", text.contains("%") ? text : amount(text)));
      }
      if (count > 1) {
        form.act(
            "unpick " + i + " " + k,
            "Leave out pick " + (k + 1),
            d -> d.without(path + "[" + at + "]"));
      }
    }
    String only = list ? path + "[0]" : path;
    if (count == 1 && draft.keys(only).contains("weave")) {
      form.act("pick " + i, "Zigzag before it", d -> d.inserted(path, 0, pick("zigzag")));
    }
  }

  private FormField depthField(String key, String label) {
    String value = draft.text(key);
    boolean share = value.contains("%");
    return share
        ? new FormField(
            key,
            FormField.Look.TYPED,
            label,
            value,
            "",
            "",
            "share of the slice; a length may stand here too",
            List.of(),
            "",
            "")
        : lengthField(
            key, label, value, "empty: the whole slice; a share such as 50 % may stand here");
  }

  private static Object pick(String kind) {
    return switch (kind) {
      case "weave" -> Map.of("weave", Map.of("pick", "4 mm", "gap", "4 mm"));
      case "zigzag" -> Map.of("zigzag", Map.of("tooth", "10 mm", "gap", "10 mm"));
      default -> "solid";
    };
  }

  private void foils(int i, String s) {
    String f = s + "fill.";
    form.group("section-" + i + "-foils", "Foils and mix", "");
    List<Choice> rules = new ArrayList<>();
    rules.add(new Choice("evenly", "as many as the slice needs"));
    rules.add(new Choice("one, centred", "one, in the middle"));
    IntStream.rangeClosed(1, MOST_FOILS)
        .forEach(n -> rules.add(new Choice(Integer.toString(n), n + " in every slice")));
    form.choice(
            f + "foils",
            "Foils in a slice",
            draft.text(f + "foils"),
            "",
            rules,
            (d, text) -> d.with(f + "foils", Form.number(text)))
        .choice(
            f + "shortEnds.rule",
            "Short ends are",
            draft.text(f + "shortEnds.rule").isEmpty() ? "join" : draft.text(f + "shortEnds.rule"),
            "",
            List.of(
                new Choice(ShortEnds.Rule.JOIN.words(), "joined to the next foil"),
                new Choice(ShortEnds.Rule.DROP.words(), "left out")),
            (d, text) -> shortEnds(d, f, "rule", text))
        .field(
            lengthField(
                f + "shortEnds.below",
                "Short is below",
                draft.text(f + "shortEnds.below").isEmpty()
                    ? "25 mm"
                    : draft.text(f + "shortEnds.below"),
                ""),
            (d, text) -> shortEnds(d, f, "below", amount(text)))
        .list(f + "mix", "Mix", "A, B, C or D; several with commas take turns, slice by slice")
        .length(f + "startFromScalp", "Product begins from the scalp", "empty: at the scalp")
        .list(s + "leaveOut", "Foils left out", "such as: row 3 foil 2, left row 1 foil 1");
  }

  private static Draft shortEnds(Draft d, String f, String key, String text) {
    Draft now = d;
    if (d.text(f + "shortEnds.rule").isEmpty()) {
      now = now.with(f + "shortEnds.rule", "join").with(f + "shortEnds.below", "25 mm");
    }
    return now.with(f + "shortEnds." + key, text);
  }
}
