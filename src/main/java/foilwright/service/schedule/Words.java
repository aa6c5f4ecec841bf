package foilwright.service.schedule;

import foilwright.units.Minutes;
import java.util.List;
import java.util.stream.Collectors;

/** Figures in words. */
final class Words {
  private Words() {}

  /** As in "the first 3 foils". */
  static String foils(int count) {
    return count == 1 ? "1 foil" : count + " foils";
  }

  static String list(List<Integer> sizes) {
    return sizes.stream().map(String::valueOf).collect(Collectors.joining(", ")) + " foils";
  }

  /** Minutes to 0.1, with hours and whole minutes above an hour. */
  static String chair(Minutes time) {
    long minutes = Math.round(time.toMinutes());
    return time.toMinutes() > 60
        ? time + " (" + minutes / 60 + " h " + minutes % 60 + " min)"
        : time.toString();
  }
}
