package foilwright.document;

import foilwright.anatomy.PartSide;
import foilwright.anatomy.Zone;
import foilwright.hair.CutShape;
import foilwright.hair.Fineness;
import foilwright.hair.HairNature;
import foilwright.hair.HairProfile;
import foilwright.hair.Haircut;
import foilwright.hair.Lengths;
import foilwright.hair.Level;
import foilwright.hair.OldLightener;
import foilwright.hair.Porosity;
import foilwright.hair.Texture;
import foilwright.head.HairlineSettings;
import foilwright.head.HeadKind;
import foilwright.head.NapeHeight;
import foilwright.head.PartSetting;
import foilwright.head.Tape;
import foilwright.head.TapeMeasurements;
import foilwright.service.SafetyAnswers;
import foilwright.service.SafetyQuestion;
import foilwright.service.SafetyResult;
import foilwright.units.Angle;
import foilwright.units.Density;
import foilwright.units.Length;
import foilwright.units.Share;
import java.time.LocalDate;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Stream;

/** Guest documents to guests. */
final class GuestReader {
  private GuestReader() {}

  static GuestDocument read(Node.ObjectNode root, ProblemLog problems) {
    Fields fields = new Fields(root, "", problems);
    fields.find("format");
    String number = number(fields.require("number"));
    Fields head = fields.require("head").fields();
    HeadKind kind = head.require("kind").word(HeadKind.values(), HeadKind::words);
    TapeMeasurements tapes =
        new TapeMeasurements(
            tape(head, Tape.AROUND),
            tape(head, Tape.FRONT_TO_BACK),
            tape(head, Tape.EAR_TO_EAR),
            tape(head, Tape.FRONT_HAIRLINE_HEIGHT),
            tape(head, Tape.NAPE_DEPTH));
    head.close();
    GuestDocument guest =
        new GuestDocument(
            number,
            kind,
            tapes,
            fields.find("hairline").map(GuestReader::hairline).orElse(HairlineSettings.USUAL),
            fields.find("part").map(GuestReader::part).orElse(PartSetting.NONE),
            hair(fields.require("hair")),
            fields.find("history").map(GuestReader::history).orElse(GuestDocument.History.NONE),
            fields.find("tests").map(GuestReader::tests).orElse(SafetyAnswers.NONE),
            fields.find("wish").map(GuestReader::wish));
    fields.close();
    return guest;
  }

  private static String number(Item item) {
    String text = item.name();
    if (text.matches(GuestDocument.NUMBER_FORM)) {
      return text;
    }
    if (!text.equals("?")) {
      item.error(
          "wrong-form",
          "guests go by number, and \"" + Fields.shortened(text) + "\" is not one",
          "write a number such as \"guest-07\"");
    }
    return "guest-00";
  }

  private static Optional<Length> tape(Fields fields, Tape tape) {
    return fields.find(tape.key()).map(i -> i.quantity(Kind.LENGTH, tape.least(), tape.most()));
  }

  private static HairlineSettings hairline(Item item) {
    Fields fields = item.fields();
    HairlineSettings usual = HairlineSettings.USUAL;
    HairlineSettings settings =
        new HairlineSettings(
            fields
                .find("recession")
                .map(i -> i.quantity(Kind.LENGTH, Length.ZERO, HairlineSettings.MOST_RECESSION))
                .orElse(usual.recessionDepth()),
            fields
                .find("nape")
                .map(i -> i.word(NapeHeight.values(), NapeHeight::words))
                .orElse(usual.nape()));
    fields.close();
    return settings;
  }

  private static PartSetting part(Item item) {
    if (!(item.node() instanceof Node.ObjectNode)) {
      return PartSetting.of(item.word(PartSide.values(), PartSide::words));
    }
    Fields fields = item.fields();
    PartSetting part =
        new PartSetting(
            fields.require("side").word(PartSide.values(), PartSide::words),
            fields
                .find("fromCentre")
                .map(
                    i ->
                        i.quantity(
                            Kind.LENGTH,
                            PartSetting.LEAST_FROM_CENTRE,
                            PartSetting.MOST_FROM_CENTRE))
                .orElse(PartSetting.USUAL_FROM_CENTRE));
    fields.close();
    return part;
  }

  private static HairProfile hair(Item item) {
    Fields fields = item.fields();
    Length elsewhere = fields.require("length").quantity(Kind.LENGTH, Length.ZERO, Lengths.MOST);
    HairProfile hair =
        new HairProfile(
            fields
                .find("density")
                .map(
                    i ->
                        i.quantity(
                            Kind.DENSITY,
                            Density.ofHairsPerSquareCentimetre(1),
                            HairProfile.MOST_DENSITY))
                .orElse(HairProfile.USUAL_DENSITY),
            fields
                .find("zoneFactors")
                .map(i -> byZone(i, f -> f.number(0, HairProfile.MOST_ZONE_FACTOR)))
                .orElse(Map.of()),
            fields
                .find("diameter")
                .map(
                    i ->
                        i.quantity(
                            Kind.LENGTH, Length.ofMillimetres(0.01), Length.ofMillimetres(0.2)))
                .orElse(HairProfile.USUAL_DIAMETER),
            nature(fields),
            fields.find("zones").map(i -> byZone(i, GuestReader::natureOfZone)).orElse(Map.of()),
            fields
                .find("oldLightener")
                .map(i -> byZone(i, GuestReader::oldLightener))
                .orElse(Map.of()),
            Lengths.of(
                elsewhere,
                fields
                    .find("lengths")
                    .map(i -> byZone(i, l -> l.quantity(Kind.LENGTH, Length.ZERO, Lengths.MOST)))
                    .orElse(Map.of())),
            fields.find("cut").map(GuestReader::cut));
    fields.close();
    return hair;
  }

  private static Haircut cut(Item item) {
    if (!(item.node() instanceof Node.ObjectNode)) {
      String name = item.name();
      return Haircut.named(name.isBlank() ? "?" : name);
    }
    Fields fields = item.fields();
    String name = fields.find("name").map(Item::name).filter(n -> !n.isBlank()).orElse("cut");
    Haircut cut =
        new Haircut(
            name,
            fields.find("shape").map(GuestReader::cutShape).orElse(new CutShape.Table()),
            fields.find("zones").map(i -> byZone(i, GuestReader::cutShape)).orElse(Map.of()),
            fields.find("faceFrame").map(GuestReader::faceFrame),
            fields
                .find("texture")
                .map(i -> i.word(Texture.values(), Texture::words))
                .orElse(Texture.STRAIGHT));
    fields.close();
    return cut;
  }

  private static CutShape cutShape(Item item) {
    if (!(item.node() instanceof Node.ObjectNode)) {
      item.word(new String[] {"table"}, word -> word);
      return new CutShape.Table();
    }
    Fields fields = item.fields();
    Optional<CutShape> oneLength =
        fields.find("oneLength").map(i -> of(i, "atNape", CutShape.OneLength::new));
    Optional<CutShape> graduated =
        fields
            .find("graduated")
            .map(
                i -> {
                  Fields g = i.fields();
                  CutShape shape =
                      new CutShape.Graduated(
                          cutLength(g.require("atNape")),
                          g.require("held").quantity(Kind.ANGLE, Angle.ZERO, Angle.ofDegrees(120)));
                  g.close();
                  return shape;
                });
    Optional<CutShape> uniform =
        fields.find("uniformLayers").map(i -> of(i, "length", CutShape.UniformLayers::new));
    Optional<CutShape> longLayers =
        fields.find("longLayers").map(i -> of(i, "onTop", CutShape.LongLayers::new));
    fields.close();
    List<CutShape> named =
        Stream.of(oneLength, graduated, uniform, longLayers).flatMap(Optional::stream).toList();
    if (named.size() != 1) {
      item.error(
          "one-of-several",
          "a cut is held in one way, and this names " + named.size(),
          "write one of: oneLength, graduated, uniformLayers, longLayers; or \"table\"");
      return new CutShape.Table();
    }
    return named.get(0);
  }

  private static CutShape of(Item item, String key, Function<Length, CutShape> shape) {
    Fields fields = item.fields();
    CutShape made = shape.apply(cutLength(fields.require(key)));
    fields.close();
    return made;
  }

  private static Length cutLength(Item item) {
    Length least = Length.ofMillimetres(1);
    Length length = item.quantity(Kind.LENGTH, least, CutShape.MOST);
    return length.compareTo(least) < 0 ? least : length;
  }

  private static Haircut.FaceFrame faceFrame(Item item) {
    Fields fields = item.fields();
    Length shortest = cutLength(fields.require("shortest"));
    Item longestItem = fields.require("longest");
    Length longest = cutLength(longestItem);
    if (longest.compareTo(shortest) < 0) {
      longestItem.error(
          "out-of-range",
          "a frame's longest length, " + longest + ", is shorter than its shortest, " + shortest,
          "exchange the two");
      longest = shortest;
    }
    Length depth =
        fields
            .find("depth")
            .map(i -> i.quantity(Kind.LENGTH, Length.ofMillimetres(5), Length.ofMillimetres(120)))
            .orElse(Haircut.FaceFrame.USUAL_DEPTH);
    fields.close();
    return new Haircut.FaceFrame(shortest, longest, depth);
  }

  private static HairNature nature(Fields fields) {
    return new HairNature(
        fields.find("level").map(GuestReader::level),
        fields.find("fineness").map(i -> i.word(Fineness.values(), Fineness::words)),
        fields.find("porosity").map(i -> i.word(Porosity.values(), Porosity::words)));
  }

  private static HairNature natureOfZone(Item item) {
    Fields fields = item.fields();
    HairNature nature = nature(fields);
    fields.close();
    return nature;
  }

  private static Level level(Item item) {
    return new Level(item.wholeNumber(Level.LEAST, Level.MOST));
  }

  private static Level wish(Item item) {
    Fields fields = item.fields();
    Level level = level(fields.require("level"));
    fields.close();
    return level;
  }

  private static OldLightener oldLightener(Item item) {
    Fields fields = item.fields();
    OldLightener old =
        new OldLightener(
            fields.require("share").quantity(Kind.SHARE, Share.ZERO, Share.ofFraction(1)),
            fields.require("fromScalp").quantity(Kind.LENGTH, Length.ZERO, Lengths.MOST));
    fields.close();
    return old;
  }

  /** A group whose keys are zones or group words; a zone named on its own wins over a group. */
  private static <V> Map<Zone, V> byZone(Item item, Function<Item, V> value) {
    Fields fields = item.fields();
    Map<Zone, V> found = new EnumMap<>(Zone.class);
    Map<Zone, V> single = new EnumMap<>(Zone.class);
    for (Map.Entry<String, Set<Zone>> word : PatternReader.zoneWords().entrySet()) {
      Map<Zone, V> into = word.getValue().size() == 1 ? single : found;
      fields
          .find(word.getKey())
          .map(value)
          .ifPresent(v -> word.getValue().forEach(zone -> into.putIfAbsent(zone, v)));
    }
    fields.close();
    found.putAll(single);
    return found;
  }

  private static GuestDocument.History history(Item item) {
    Fields fields = item.fields();
    GuestDocument.History history =
        new GuestDocument.History(
            fields.find("lastVisit").flatMap(Item::date), fields.find("pattern").map(Item::name));
    fields.close();
    return history;
  }

  private static SafetyAnswers tests(Item item) {
    Fields fields = item.fields();
    Map<SafetyQuestion, SafetyAnswers.Answer> answers = new EnumMap<>(SafetyQuestion.class);
    for (SafetyQuestion question : SafetyQuestion.values()) {
      fields
          .find(question.key())
          .map(found -> answer(found, question))
          .ifPresent(answer -> answers.put(question, answer));
    }
    fields.close();
    return new SafetyAnswers(answers);
  }

  private static SafetyAnswers.Answer answer(Item item, SafetyQuestion question) {
    Fields fields = item.fields();
    SafetyAnswers.Answer answer =
        new SafetyAnswers.Answer(
            fields.require("answer").name(),
            fields.find("result").map(i -> i.word(SafetyResult.values(), question::word)),
            fields.find("date").flatMap(Item::date).map(LocalDate::toString));
    fields.close();
    return answer;
  }
}
