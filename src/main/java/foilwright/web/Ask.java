package foilwright.web;

import foilwright.anatomy.PartSide;
import foilwright.app.PartWish;
import foilwright.app.PlanRequest;
import foilwright.app.Planning;
import foilwright.app.WayOut;
import foilwright.app.Working;
import foilwright.head.PartSetting;
import foilwright.units.Length;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * What a page shows, as its address says it.
 *
 * @param pattern name of a pattern
 * @param guest a guest's number; empty for a usual head
 * @param house name of a house; empty for the usual one
 * @param pace name of a pace; empty for the house's first
 * @param part where the part is worn, a side in words with or without its distance from the centre
 *     line, as in {@code left 24 mm}; empty as the guest wears it
 * @param out how the foils come out
 * @param hands pairs of them, 1 to 4
 * @param unit in which lengths are shown
 */
public record Ask(
    String pattern,
    String guest,
    String house,
    String pace,
    String part,
    WayOut out,
    int hands,
    LengthUnit unit) {
  static final Ask FIRST =
      new Ask("dark-rim", "guest-07", "", "", "", WayOut.BEST, 1, LengthUnit.MM);

  static Ask of(java.util.function.UnaryOperator<String> parameter) {
    String pattern = or(parameter.apply("pattern"), FIRST.pattern);
    String guest = or(parameter.apply("guest"), FIRST.guest);
    String out = or(parameter.apply("out"), WayOut.BEST.word());
    return new Ask(
        pattern,
        guest,
        or(parameter.apply("house"), ""),
        or(parameter.apply("pace"), ""),
        or(parameter.apply("part"), ""),
        Arrays.stream(WayOut.values())
            .filter(way -> way.word().equals(out))
            .findFirst()
            .orElse(WayOut.BEST),
        hands(or(parameter.apply("hands"), "")),
        LengthUnit.of(or(parameter.apply("unit"), "")));
  }

  private static int hands(String text) {
    return text.matches("[1-" + Working.MOST_HANDS + "]") ? Integer.parseInt(text) : 1;
  }

  private static String or(String value, String otherwise) {
    return value == null ? otherwise : value;
  }

  Ask withOut(WayOut way) {
    return new Ask(pattern, guest, house, pace, part, way, hands, unit);
  }

  Ask withHands(int pairs) {
    return new Ask(pattern, guest, house, pace, part, out, pairs, unit);
  }

  Ask withGuest(String number) {
    return new Ask(pattern, number, house, pace, part, out, hands, unit);
  }

  Ask withPattern(String name) {
    return new Ask(name, guest, house, pace, part, out, hands, unit);
  }

  Ask withHouse(String name) {
    return new Ask(pattern, guest, name, pace, part, out, hands, unit);
  }

  Ask withPace(String name) {
    return new Ask(pattern, guest, house, name, part, out, hands, unit);
  }

  /** The house by its name. */
  public String houseName() {
    return house.isEmpty() ? Planning.USUAL_HOUSE : house;
  }

  Ask withPart(String words) {
    return new Ask(pattern, guest, house, pace, words, out, hands, unit);
  }

  PlanRequest request(LocalDate today) {
    PlanRequest request =
        PlanRequest.of(pattern).on(today).withWorking(new Working(out, hands, List.of()));
    request = guest.isEmpty() ? request : request.withGuest(guest);
    request = house.isEmpty() ? request : request.withHouse(house);
    request = pace.isEmpty() ? request : request.withPace(pace);
    return wish().map(request::withPart).orElse(request);
  }

  /** The part that is asked for; empty as the guest wears it, or when the words are none. */
  private Optional<PartWish> wish() {
    int end = part.indexOf(' ');
    String word = end < 0 ? part : part.substring(0, end);
    Optional<PartSide> side =
        Arrays.stream(PartSide.values()).filter(s -> s.words().equals(word)).findFirst();
    if (end < 0 || side.isEmpty()) {
      return side.map(PartWish::on);
    }
    try {
      Length aside =
          new PartSetting(side.get(), Length.parse(part.substring(end + 1))).fromCentre();
      return Optional.of(new PartWish(side.get(), Optional.of(aside)));
    } catch (IllegalArgumentException e) {
      return side.map(PartWish::on);
    }
  }

  /** Whether the part is worn somewhere that no choice of the page names. */
  public boolean isPartMeasured() {
    return wish().flatMap(PartWish::fromCentre).isPresent();
  }

  /** The part of an address behind the question mark. */
  public String query() {
    List<String> parts = new ArrayList<>();
    parts.add("pattern=" + encoded(pattern));
    parts.add("guest=" + encoded(guest));
    add(parts, "house", house);
    add(parts, "pace", pace);
    add(parts, "part", part);
    add(parts, "out", out == WayOut.BEST ? "" : out.word());
    add(parts, "hands", hands == 1 ? "" : Integer.toString(hands));
    add(parts, "unit", unit == LengthUnit.MM ? "" : unit.word());
    return String.join("&", parts);
  }

  private static void add(List<String> parts, String name, String value) {
    if (!value.isEmpty()) {
      parts.add(name + "=" + encoded(value));
    }
  }

  private static String encoded(String text) {
    return URLEncoder.encode(text, StandardCharsets.UTF_8);
  }
}
