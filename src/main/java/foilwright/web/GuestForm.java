package foilwright.web;

import foilwright.anatomy.PartSide;
import foilwright.anatomy.Zone;
import foilwright.app.Draft;
import foilwright.hair.Fineness;
import foilwright.hair.Porosity;
import foilwright.hair.Texture;
import foilwright.head.HeadKind;
import foilwright.head.NapeHeight;
import foilwright.head.Tape;
import foilwright.service.SafetyQuestion;
import foilwright.service.SafetyResult;
import foilwright.web.FormField.Choice;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;

/** A guest's fields: head by tape, hair, cut, history, and what is on file. */
final class GuestForm {
  private static final Map<String, Map<String, String>> CUTS =
      Map.of(
          "oneLength", Map.of("atNape", "300 mm"),
          "graduated", Map.of("atNape", "100 mm", "held", "45 deg"),
          "uniformLayers", Map.of("length", "120 mm"),
          "longLayers", Map.of("onTop", "250 mm"));

  private final Draft draft;
  private final Form form;

  private GuestForm(Draft draft, LengthUnit unit) {
    this.draft = draft;
    form = new Form(draft, unit);
  }

  static Form of(Draft draft, LengthUnit unit) {
    GuestForm guest = new GuestForm(draft, unit);
    guest.head();
    guest.hair();
    guest.cut();
    guest.zones();
    guest.history();
    guest.tests();
    return guest.form;
  }

  private static List<String> words(Stream<String> words) {
    return words.toList();
  }

  private void head() {
    form.group(
            "head",
            "Head by tape",
            "What is left empty is filled in from the usual head of the kind."
                + " Inches may be typed as 21 1/2.")
        .choice(
            "head.kind",
            "Kind of head",
            "",
            words(Arrays.stream(HeadKind.values()).map(HeadKind::words)));
    for (Tape tape : Tape.values()) {
      form.drawnLength(
          "head." + tape.key(),
          label(tape.words()),
          "",
          "tape-" + tape.name().toLowerCase(Locale.ROOT).replace('_', '-'));
    }
    form.length("hairline.recession", "Recession at the temples", "empty: 10 mm")
        .choice(
            "hairline.nape",
            "Hair at the nape grows",
            NapeHeight.MIDDLE.words(),
            words(Arrays.stream(NapeHeight.values()).map(NapeHeight::words)));
    boolean grouped = !draft.keys("part").isEmpty();
    String side = grouped ? draft.text("part.side") : draft.text("part");
    form.choice(
        "part",
        "Part is worn",
        side.isEmpty() ? PartSide.NONE.words() : side,
        "",
        Arrays.stream(PartSide.values()).map(p -> Choice.of(p.words())).toList(),
        (d, text) ->
            text.equals(PartSide.NONE.words())
                ? d.without("part")
                : grouped ? d.with("part.side", text) : d.with("part", text));
    if (!side.isEmpty() && !side.equals(PartSide.CENTRE.words())) {
      form.length(
          "part.fromCentre",
          "Part from the centre line",
          "empty: the usual distance",
          (d, text) ->
              text.isEmpty()
                  ? d.with("part", side)
                  : d.with("part", Map.of("side", side, "fromCentre", text)));
    }
  }

  private void hair() {
    form.group("hair", "Hair", "Used for grams, shares of hair lightened, lift and cautions.")
        .length("hair.length", "Length in general", "")
        .quantity(
            "hair.density",
            "Density",
            "per cm2",
            "10",
            "hairs on a square centimetre; empty: usual")
        .field(
            new FormField(
                "hair.diameter",
                FormField.Look.TYPED,
                "Diameter of a hair",
                draft.text("hair.diameter").replace(" mm", ""),
                "mm",
                "0.01",
                "0.01 to 0.2 mm; empty: usual",
                List.of(),
                "",
                ""),
            (d, text) ->
                text.isEmpty()
                    ? d.without("hair.diameter")
                    : d.with("hair.diameter", LengthUnit.MM.withUnit(text)));
    nature("hair.", "");
    form.number("wish.level", "Level wished for", "", "1", "1 to 10; empty: not said");
  }

  private void nature(String path, String of) {
    form.number(
            path + "level", "Natural level" + of, "", "1", "1 to 10, 1 darkest; empty: not known")
        .choice(
            path + "fineness",
            "Fineness" + of,
            "not known",
            words(Arrays.stream(Fineness.values()).map(Fineness::words)))
        .choice(
            path + "porosity",
            "Porosity" + of,
            "not known",
            words(Arrays.stream(Porosity.values()).map(Porosity::words)));
  }

  // The cut.

  private void cut() {
    form.group("cut", "Haircut", "Decides how long the hair is at each root, and so what shows.");
    String c = "hair.cut";
    boolean grouped = !draft.keys(c).isEmpty();
    String name = grouped ? draft.text(c + ".name") : draft.text(c);
    form.field(
        new FormField(
            c + ".name", FormField.Look.TYPED, "Called", name, "", "", "", List.of(), "", ""),
        (d, text) -> text.isEmpty() ? d.without(c) : cut(d).with(c + ".name", text));
    how(c + ".shape", "How it is cut", "lengths by zone");
    form.choice(
        c + ".texture",
        "Falls",
        draft.text(c + ".texture").isEmpty()
            ? Texture.STRAIGHT.words()
            : draft.text(c + ".texture"),
        "",
        Arrays.stream(Texture.values()).map(t -> Choice.of(t.words())).toList(),
        (d, text) -> cut(d).with(c + ".texture", text));
    String f = c + ".faceFrame";
    boolean frame = !draft.keys(f).isEmpty();
    form.choice(
        f,
        "Face frame or fringe",
        frame ? "yes" : "",
        "",
        List.of(new Choice("", "none cut"), new Choice("yes", "cut shorter round the face")),
        (d, text) ->
            text.isEmpty()
                ? d.without(f)
                : cut(d).with(f, Map.of("shortest", "80 mm", "longest", "200 mm")));
    if (frame) {
      form.length(f + ".shortest", "Frame: shortest", "in the middle")
          .length(f + ".longest", "Frame: longest", "at its ends")
          .length(f + ".depth", "Frame: depth", "from the front hairline; empty: usual");
    }
  }

  /** The guest with a cut that is a group. */
  private static Draft cut(Draft d) {
    if (!d.keys("hair.cut").isEmpty()) {
      return d;
    }
    String name = d.text("hair.cut");
    return d.with("hair.cut", Map.of("name", name.isEmpty() ? "cut" : name));
  }

  private void how(String path, String label, String otherwise) {
    String kind = draft.keys(path).stream().findFirst().orElse("");
    form.choice(
        path,
        label,
        kind,
        "",
        List.of(
            new Choice("", otherwise),
            new Choice("oneLength", "one length"),
            new Choice("graduated", "graduated"),
            new Choice("uniformLayers", "uniform layers"),
            new Choice("longLayers", "long layers")),
        (d, text) ->
            text.isEmpty() ? d.without(path) : cut(d).with(path, Map.of(text, CUTS.get(text))));
    String p = path + "." + kind + ".";
    switch (kind) {
      case "oneLength" -> form.length(p + "atNape", label + ": at the nape", "");
      case "graduated" ->
          form.length(p + "atNape", label + ": at the nape", "")
              .quantity(
                  p + "held",
                  label + ": held at",
                  "deg",
                  "5",
                  "0 is one length, 90 the same everywhere");
      case "uniformLayers" -> form.length(p + "length", label + ": length", "");
      case "longLayers" -> form.length(p + "onTop", label + ": on top", "");
      default -> {
        // Lengths stand with the zones.
      }
    }
  }

  private void zones() {
    for (Zone zone : Zone.values()) {
      String z = zone.words();
      form.group("zone-" + z.replace(' ', '-'), "In the zone " + z, "")
          .length("hair.lengths." + z, "Length here", "empty: as in general");
      how("hair.cut.zones." + z, "Cut here", "as the rest");
      form.number(
          "hair.zoneFactors." + z, "Times the density", "", "0.1", "1.1 is a tenth more; empty: 1");
      nature("hair.zones." + z + ".", " here");
      String old = "hair.oldLightener." + z;
      form.quantity(
              old + ".share",
              "Old lightener: share",
              "%",
              "5",
              "of the hair; empty: none",
              (d, text) ->
                  text.isEmpty()
                      ? d.without(old)
                      : withDefault(d.with(old + ".share", text), old + ".fromScalp", "30 mm"))
          .length(
              old + ".fromScalp",
              "Old lightener: begins from the scalp",
              "",
              (d, text) ->
                  text.isEmpty()
                      ? d.without(old)
                      : withDefault(d.with(old + ".fromScalp", text), old + ".share", "30 %"));
    }
  }

  private static Draft withDefault(Draft d, String path, String value) {
    return d.text(path).isEmpty() ? d.with(path, value) : d;
  }

  private void history() {
    form.group("history", "Last visit", "")
        .text("history.lastVisit", "Day", "year-month-day, such as 2026-03-01")
        .text("history.pattern", "Pattern that was worked", "its title");
  }

  private void tests() {
    for (SafetyQuestion question : SafetyQuestion.values()) {
      String t = "tests." + question.key();
      form.group(
              "test-" + question.key(),
              label(question.words()),
              "A missing answer is never taken as passed.")
          .choice(
              t + ".result",
              "Result",
              draft.text(t + ".result"),
              "",
              Stream.concat(
                      Stream.of(new Choice("", "no answer")),
                      Arrays.stream(SafetyResult.values()).map(r -> Choice.of(question.word(r))))
                  .toList(),
              (d, text) ->
                  text.isEmpty()
                      ? d.without(t)
                      : withDefault(d.with(t + ".result", text), t + ".answer", text))
          .text(t + ".answer", "In words", "")
          .text(t + ".date", "Day", "year-month-day");
    }
  }

  private static String label(String words) {
    return words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
  }
}
