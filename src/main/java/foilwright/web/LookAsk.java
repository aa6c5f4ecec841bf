package foilwright.web;

import foilwright.anatomy.PartSide;
import foilwright.app.LiveLook;
import foilwright.app.LookRequest;
import foilwright.app.Plan;
import foilwright.fall.HairStyle;
import io.javalin.http.BadRequestResponse;
import java.util.Arrays;
import java.util.Optional;
import java.util.function.UnaryOperator;

/**
 * How a person wants to see the hair.
 *
 * @param viewer who asks: the page in one tab
 * @param part where the hair is combed apart; empty as planned
 * @param months since the visit
 * @param fine all hairs, not the few of a first picture
 */
record LookAsk(
    String viewer, Optional<PartSide> part, double months, HairStyle style, boolean fine) {
  private static final int HEIGHT_PX = 480;

  static LookAsk of(UnaryOperator<String> parameter) {
    String part = or(parameter.apply("combed"), "");
    String style = or(parameter.apply("style"), HairStyle.NATURAL.words());
    return new LookAsk(
        viewer(parameter),
        part.isEmpty()
            ? Optional.empty()
            : Optional.of(
                Arrays.stream(PartSide.values())
                    .filter(side -> side.words().equals(part))
                    .findFirst()
                    .orElseThrow(
                        () -> new BadRequestResponse("There is no part \"" + part + "\"."))),
        months(or(parameter.apply("months"), "0")),
        Arrays.stream(HairStyle.values())
            .filter(s -> s.words().equals(style))
            .findFirst()
            .orElseThrow(() -> new BadRequestResponse("Hair is not worn \"" + style + "\" here.")),
        parameter.apply("fine") != null);
  }

  static String viewer(UnaryOperator<String> parameter) {
    String viewer = or(parameter.apply("viewer"), "");
    if (!viewer.matches("[0-9a-f]{8,64}")) {
      throw new BadRequestResponse("A look needs to know which page asks for it.");
    }
    return viewer;
  }

  private static String or(String value, String otherwise) {
    return value == null ? otherwise : value;
  }

  private static double months(String text) {
    if (!text.matches("\\d{1,2}(\\.\\d{1,3})?")
        || Double.parseDouble(text) > LookRequest.MOST_MONTHS) {
      throw new BadRequestResponse("\"" + text + "\" is not a number of months from 0 to 12.");
    }
    return Double.parseDouble(text);
  }

  /** What is wanted of a plan, of no more than so many hairs. */
  LiveLook.Wanted wanted(Plan plan, int most) {
    LiveLook.Wanted wanted =
        LiveLook.Wanted.of(plan)
            .withHairs(fine ? most : Math.min(most, LiveLook.Wanted.FIRST_HAIRS))
            .withMonths(months)
            .withStyle(style)
            .withHeight(HEIGHT_PX)
            .withFigures(true);
    return part.map(wanted::withPart).orElse(wanted);
  }
}
