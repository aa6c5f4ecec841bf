package foilwright.document;

import foilwright.anatomy.Zone;
import foilwright.hair.CutShape;
import foilwright.hair.HairNature;
import foilwright.hair.HairProfile;
import foilwright.hair.Haircut;
import foilwright.hair.OldLightener;
import foilwright.hair.Texture;
import foilwright.head.HairlineSettings;
import foilwright.head.PartSetting;
import foilwright.head.TapeMeasurements;
import foilwright.service.SafetyAnswers;
import foilwright.units.Length;
import java.util.Collection;
import java.util.Collections;
import java.util.Comparator;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import java.util.function.Function;

/** Guests to documents; what has its usual value is left out. */
final class GuestWriter {
  private GuestWriter() {}

  static Map<String, Object> write(GuestDocument guest) {
    Json.Group group =
        new Json.Group()
            .put("format", Format.GUEST.text())
            .put("number", guest.number())
            .put("head", head(guest));
    if (!guest.hairline().equals(HairlineSettings.USUAL)) {
      group.put(
          "hairline",
          new Json.Group()
              .put("recession", Kind.LENGTH.write(guest.hairline().recessionDepth()))
              .put("nape", guest.hairline().nape().words())
              .toMap());
    }
    return group
        .putIf(!guest.part().equals(PartSetting.NONE), "part", part(guest.part()))
        .put("hair", hair(guest.hair()))
        .putIf(
            !guest.history().equals(GuestDocument.History.NONE),
            "history",
            history(guest.history()))
        .putIf(!guest.tests().answers().isEmpty(), "tests", tests(guest.tests()))
        .putIf(guest.wish().isPresent(), "wish", wish(guest))
        .toMap();
  }

  private static Map<String, Object> wish(GuestDocument guest) {
    Json.Group group = new Json.Group();
    guest.wish().ifPresent(level -> group.put("level", level.number()));
    return group.toMap();
  }

  private static Map<String, Object> head(GuestDocument guest) {
    Json.Group group = new Json.Group().put("kind", guest.head().words());
    TapeMeasurements tapes = guest.tapes();
    putLength(group, "around", tapes.around());
    putLength(group, "frontToBack", tapes.frontToBack());
    putLength(group, "earToEar", tapes.earToEar());
    putLength(group, "frontHairlineHeight", tapes.frontHairlineHeight());
    putLength(group, "napeDepth", tapes.napeDepth());
    return group.toMap();
  }

  private static void putLength(Json.Group group, String key, Optional<Length> length) {
    length.ifPresent(l -> group.put(key, Kind.LENGTH.write(l)));
  }

  private static Object part(PartSetting part) {
    return part.equals(PartSetting.of(part.side()))
        ? part.side().words()
        : new Json.Group()
            .put("side", part.side().words())
            .put("fromCentre", Kind.LENGTH.write(part.fromCentre()))
            .toMap();
  }

  private static Map<String, Object> hair(HairProfile hair) {
    Json.Group group = new Json.Group();
    group.putIf(
        !hair.density().equals(HairProfile.USUAL_DENSITY),
        "density",
        Kind.DENSITY.write(hair.density()));
    group.putIf(!hair.zoneFactors().isEmpty(), "zoneFactors", byZone(hair.zoneFactors(), f -> f));
    group.putIf(
        !hair.diameter().equals(HairProfile.USUAL_DIAMETER),
        "diameter",
        Kind.LENGTH.write(hair.diameter()));
    putNature(group, hair.nature());
    group.putIf(
        !hair.zoneNatures().isEmpty(),
        "zones",
        byZone(hair.zoneNatures(), nature -> putNature(new Json.Group(), nature).toMap()));
    group.putIf(
        !hair.oldLightener().isEmpty(),
        "oldLightener",
        byZone(hair.oldLightener(), GuestWriter::oldLightener));
    Length usual = mostFrequent(hair.lengths().byZone().values());
    Map<String, Object> others = byZone(hair.lengths().byZone(), Kind.LENGTH::write);
    others.values().removeIf(text -> text.equals(Kind.LENGTH.write(usual)));
    group.put("length", Kind.LENGTH.write(usual));
    group.putIf(!others.isEmpty(), "lengths", others);
    hair.cut().ifPresent(cut -> group.put("cut", cut(cut)));
    return group.toMap();
  }

  private static Json.Group putNature(Json.Group group, HairNature nature) {
    nature.level().ifPresent(level -> group.put("level", level.number()));
    nature.fineness().ifPresent(fineness -> group.put("fineness", fineness.words()));
    nature.porosity().ifPresent(porosity -> group.put("porosity", porosity.words()));
    return group;
  }

  private static Object cut(Haircut cut) {
    if (cut.equals(Haircut.named(cut.name()))) {
      return cut.name();
    }
    Json.Group group = new Json.Group().put("name", cut.name());
    group.putIf(!(cut.shape() instanceof CutShape.Table), "shape", shape(cut.shape()));
    group.putIf(!cut.zones().isEmpty(), "zones", byZone(cut.zones(), GuestWriter::shape));
    cut.frame()
        .ifPresent(
            frame ->
                group.put(
                    "faceFrame",
                    new Json.Group()
                        .put("shortest", Kind.LENGTH.write(frame.shortest()))
                        .put("longest", Kind.LENGTH.write(frame.longest()))
                        .putIf(
                            !frame.depth().equals(Haircut.FaceFrame.USUAL_DEPTH),
                            "depth",
                            Kind.LENGTH.write(frame.depth()))
                        .toMap()));
    group.putIf(cut.texture() != Texture.STRAIGHT, "texture", cut.texture().words());
    return group.toMap();
  }

  private static Object shape(CutShape shape) {
    return shape.<Object>match(
        s -> "table",
        s -> shape("oneLength", new Json.Group().put("atNape", Kind.LENGTH.write(s.atNape()))),
        s ->
            shape(
                "graduated",
                new Json.Group()
                    .put("atNape", Kind.LENGTH.write(s.atNape()))
                    .put("held", Kind.ANGLE.write(s.held()))),
        s -> shape("uniformLayers", new Json.Group().put("length", Kind.LENGTH.write(s.length()))),
        s -> shape("longLayers", new Json.Group().put("onTop", Kind.LENGTH.write(s.onTop()))));
  }

  private static Object shape(String key, Json.Group how) {
    return new Json.Group().put(key, how.toMap()).toMap();
  }

  /** Of those that occur equally often, the longest. */
  private static Length mostFrequent(Collection<Length> lengths) {
    return new TreeSet<>(lengths)
        .stream()
            .max(
                Comparator.<Length>comparingInt(l -> Collections.frequency(lengths, l))
                    .thenComparing(Comparator.naturalOrder()))
            .orElseThrow();
  }

  private static <V> Map<String, Object> byZone(Map<Zone, V> values, Function<V, Object> write) {
    Json.Group group = new Json.Group();
    values.forEach((zone, value) -> group.put(zone.words(), write.apply(value)));
    return group.toMap();
  }

  private static Map<String, Object> oldLightener(OldLightener old) {
    return new Json.Group()
        .put("share", Kind.SHARE.write(old.share()))
        .put("fromScalp", Kind.LENGTH.write(old.fromScalp()))
        .toMap();
  }

  private static Map<String, Object> history(GuestDocument.History history) {
    Json.Group group = new Json.Group();
    history.lastVisit().ifPresent(date -> group.put("lastVisit", date.toString()));
    history.pattern().ifPresent(title -> group.put("pattern", title));
    return group.toMap();
  }

  private static Map<String, Object> tests(SafetyAnswers tests) {
    Json.Group group = new Json.Group();
    tests
        .answers()
        .forEach(
            (question, answer) -> {
              Json.Group written = new Json.Group().put("answer", answer.text());
              answer.result().ifPresent(result -> written.put("result", question.word(result)));
              answer.date().ifPresent(date -> written.put("date", date));
              group.put(question.key(), written.toMap());
            });
    return group.toMap();
  }
}
