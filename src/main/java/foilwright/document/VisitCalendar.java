package foilwright.document;

import biweekly.Biweekly;
import biweekly.ICalendar;
import biweekly.component.VEvent;
import biweekly.property.Transparency;
import java.nio.charset.StandardCharsets;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Date;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/**
 * One visit as an iCalendar (RFC 5545): an event for the chair time and, if wanted, a second one
 * that leaves its time free for the longest gap in which the hands are not needed.
 *
 * <p>Times are floating: the local time of whoever reads the calendar. The same visit gives the
 * same bytes everywhere: its identifier comes from title and start alone, so that a plan changed
 * later replaces the entry, and its stamp is the start taken as universal time. Seconds are kept,
 * parts of a second are not. Lines end in CRLF and have at most 75 octets.
 *
 * @param title such as {@code Foils, guest-07}; a guest's number, never a name
 * @param start beginning of the chair time; years 1 to 9999
 * @param end after {@code start}
 * @param description one line each; may be empty
 * @param freeGap within the chair time
 */
public record VisitCalendar(
    String title,
    LocalDateTime start,
    LocalDateTime end,
    List<String> description,
    Optional<FreeGap> freeGap) {
  private static final String PRODUCT = "-//Foilwright//visit//EN";
  private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("uuuuMMdd'T'HHmmss");
  private static final int OCTETS = 75;

  /** A stretch of the visit in which the hands are free. */
  public record FreeGap(LocalDateTime start, LocalDateTime end) {
    public FreeGap {
      if (!end.isAfter(start)) {
        throw new IllegalArgumentException("a gap from " + start + " cannot end at " + end);
      }
    }
  }

  public VisitCalendar {
    description = List.copyOf(description);
    if (title.isBlank()) {
      throw new IllegalArgumentException("a visit needs a title");
    }
    if (!end.isAfter(start) || start.getYear() < 1 || end.getYear() > 9999) {
      throw new IllegalArgumentException(
          "a visit from " + start + " cannot end at " + end + "; years are 1 to 9999");
    }
    if (freeGap.isPresent()
        && (freeGap.get().start().isBefore(start) || freeGap.get().end().isAfter(end))) {
      throw new IllegalArgumentException(
          freeGap.get() + " lies outside the visit from " + start + " to " + end);
    }
  }

  /** The calendar in UTF-8. */
  public byte[] toBytes() {
    ICalendar calendar = new ICalendar();
    calendar.setProductId(PRODUCT);
    VEvent visit = event(title, "chair", start, end);
    if (!description.isEmpty()) {
      visit.setDescription(String.join("\n", description));
    }
    calendar.addEvent(visit);
    if (freeGap.isPresent()) {
      VEvent gap = event(title + ": hands free", "gap", freeGap.get().start(), freeGap.get().end());
      gap.setTransparency(Transparency.transparent());
      calendar.addEvent(gap);
    }
    // The library folds by characters, the standard by octets.
    String unfolded = Biweekly.write(calendar).go().replace("\r\n ", "");
    return folded(unfolded).getBytes(StandardCharsets.UTF_8);
  }

  private VEvent event(String summary, String part, LocalDateTime from, LocalDateTime to) {
    VEvent event = new VEvent();
    String seed = "foilwright visit\n" + title + "\n" + start + "\n" + part;
    event.setUid(UUID.nameUUIDFromBytes(seed.getBytes(StandardCharsets.UTF_8)).toString());
    event.setDateTimeStamp(Date.from(start.toInstant(ZoneOffset.UTC)));
    event.setSummary(summary);
    // As raw text: local times would pass through the zone of the machine.
    event.addExperimentalProperty("DTSTART", from.format(TIME));
    event.addExperimentalProperty("DTEND", to.format(TIME));
    return event;
  }

  /** Breaks lines that have more than {@value #OCTETS} octets, never inside a character. */
  private static String folded(String text) {
    StringBuilder folded = new StringBuilder();
    int octets = 0;
    for (int i = 0; i < text.length(); ) {
      int c = text.codePointAt(i);
      i += Character.charCount(c);
      int size = Character.toString(c).getBytes(StandardCharsets.UTF_8).length;
      if (c == '\r' || c == '\n') {
        octets = 0;
      } else if (octets + size > OCTETS) {
        folded.append("\r\n ");
        octets = 1 + size;
      } else {
        octets += size;
      }
      folded.appendCodePoint(c);
    }
    return folded.toString();
  }
}
