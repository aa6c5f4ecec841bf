package foilwright.document;

import foilwright.service.marking.Attempt;
import foilwright.service.marking.Measured;
import foilwright.units.Angle;
import foilwright.units.Length;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;

/** Measured practice work, read and written. */
final class AttemptDocument {
  private static final Length MOST = Length.ofMillimetres(300);
  private static final Angle UPRIGHT = Angle.ofDegrees(90);
  private static final int MOST_FOILS = 999;

  private AttemptDocument() {}

  static Attempt read(Node.ObjectNode root, ProblemLog problems) {
    Fields fields = new Fields(root, "", problems);
    fields.find("format");
    Item number = fields.require("learner");
    String learner = number.name();
    if (!learner.matches("learner-\\d{2,6}")) {
      if (number.isText() && !learner.equals("?")) {
        number.error(
            "wrong-form",
            "\"" + Fields.shortened(learner) + "\" is not a learner's number",
            "write for example \"learner-04\"");
      }
      learner = "learner-00";
    }
    OptionalInt left = count(fields.find("foilsLeft"));
    OptionalInt right = count(fields.find("foilsRight"));
    List<Measured> foils = new ArrayList<>();
    Set<Integer> numbers = new HashSet<>();
    for (Item item : fields.require("foils").items(0)) {
      Measured measured = measured(item);
      if (numbers.add(measured.foil())) {
        foils.add(measured);
      } else {
        item.error(
            "duplicate-name",
            "foil " + measured.foil() + " comes twice",
            "write all values of a foil in one group");
      }
    }
    fields.close();
    return new Attempt(learner, foils, left, right);
  }

  private static OptionalInt count(Optional<Item> item) {
    return item.map(i -> OptionalInt.of(i.wholeNumber(0, MOST_FOILS))).orElse(OptionalInt.empty());
  }

  private static Measured measured(Item item) {
    Fields fields = item.fields();
    int foil = fields.require("foil").wholeNumber(1, MOST_FOILS);
    Measured measured =
        new Measured(
            foil,
            length(fields, "straight"),
            length(fields, "slice"),
            length(fields, "background"),
            fields.find("angle").map(i -> i.quantity(Kind.ANGLE, Angle.ZERO, UPRIGHT)));
    fields.close();
    return measured;
  }

  private static Optional<Length> length(Fields fields, String key) {
    return fields.find(key).map(i -> i.quantity(Kind.LENGTH, Length.ZERO, MOST));
  }

  static Map<String, Object> write(Attempt attempt) {
    Json.Group group =
        new Json.Group().put("format", Format.ATTEMPT.text()).put("learner", attempt.learner());
    attempt.foilsLeft().ifPresent(n -> group.put("foilsLeft", n));
    attempt.foilsRight().ifPresent(n -> group.put("foilsRight", n));
    return group
        .put("foils", attempt.foils().stream().map(AttemptDocument::write).toList())
        .toMap();
  }

  private static Map<String, Object> write(Measured measured) {
    Json.Group group = new Json.Group().put("foil", measured.foil());
    measured.straight().ifPresent(v -> group.put("straight", Kind.LENGTH.write(v)));
    measured.slice().ifPresent(v -> group.put("slice", Kind.LENGTH.write(v)));
    measured.background().ifPresent(v -> group.put("background", Kind.LENGTH.write(v)));
    measured.angle().ifPresent(v -> group.put("angle", Kind.ANGLE.write(v)));
    return group.toMap();
  }
}
