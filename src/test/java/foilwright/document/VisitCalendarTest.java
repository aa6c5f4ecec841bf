package foilwright.document;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import foilwright.document.VisitCalendar.FreeGap;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.time.LocalDateTime;
import java.time.ZonedDateTime;
import java.time.temporal.Temporal;
import java.util.List;
import java.util.Optional;
import java.util.TimeZone;
import net.fortuna.ical4j.data.CalendarBuilder;
import net.fortuna.ical4j.model.Calendar;
import net.fortuna.ical4j.model.component.VEvent;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The calendar of a visit, read by another library, and octet by octet. */
class VisitCalendarTest {
  private static final LocalDateTime START = LocalDateTime.of(2026, 3, 29, 2, 30);
  private static final List<String> LINES =
      List.of(
          "Hands: consult, section, mix and place, 74 min",
          "Developing: 20 min; free gap 12 min; f\u00fcr Fr\u00fchaufsteher, \u00e9t\u00e9 \u2013 \u65e5\u672c\u8a9e \ud83d\udd50, and then a long line;"
              + " with commas, semicolons; a back\\slash and \u00fc\u00fc\u00fc\u00fc\u00fc\u00fc\u00fc\u00fc\u00fc\u00fc\u00fc\u00fc\u00fc\u00fc\u00fc\u00fc\u00fc\u00fc\u00fc\u00fc\u00fc\u00fc\u00fc\u00fc\u00fc\u00fc\u00fc\u00fc\u00fc\u00fc\u00fc\u00fc",
          "Toner: 22 min");
  private static final VisitCalendar VISIT =
      new VisitCalendar(
          "Foils, guest-07",
          START,
          START.plusMinutes(185),
          LINES,
          Optional.of(new FreeGap(START.plusMinutes(80), START.plusMinutes(92))));

  private static Calendar read(VisitCalendar visit) throws Exception {
    return new CalendarBuilder().build(new ByteArrayInputStream(visit.toBytes()));
  }

  private static List<VEvent> events(Calendar calendar) {
    return calendar.getComponents("VEVENT");
  }

  private static String value(VEvent event, String name) {
    return event.getRequiredProperty(name).getValue();
  }

  @Test
  void anotherLibraryReadsTheVisit() throws Exception {
    Calendar calendar = read(VISIT);
    assertFalse(calendar.validate(false).hasErrors());
    assertEquals("2.0", calendar.getRequiredProperty("VERSION").getValue());
    assertEquals("-//Foilwright//visit//EN", calendar.getRequiredProperty("PRODID").getValue());
    VEvent visit = events(calendar).get(0);
    assertEquals("Foils, guest-07", value(visit, "SUMMARY"));
    assertEquals(String.join("\n", LINES), value(visit, "DESCRIPTION"));
    assertEquals(START, visit.<Temporal>getDateTimeStart().getDate());
    assertEquals(START.plusMinutes(185), visit.<Temporal>getDateTimeEnd().getDate());
    assertTrue(visit.getProperty("TRANSP").isEmpty());
  }

  @Test
  void theFreeGapLeavesItsTimeFree() throws Exception {
    List<VEvent> events = events(read(VISIT));
    assertEquals(2, events.size());
    VEvent gap = events.get(1);
    assertEquals("Foils, guest-07: hands free", value(gap, "SUMMARY"));
    assertEquals("TRANSPARENT", value(gap, "TRANSP"));
    assertEquals(START.plusMinutes(80), gap.<Temporal>getDateTimeStart().getDate());
    assertEquals(START.plusMinutes(92), gap.<Temporal>getDateTimeEnd().getDate());
    assertNotEquals(value(events.get(0), "UID"), value(gap, "UID"));
    VisitCalendar whole =
        new VisitCalendar("x", START, START.plusMinutes(1), List.of(), Optional.empty());
    assertEquals(1, events(read(whole)).size());
    assertTrue(events(read(whole)).get(0).getProperty("DESCRIPTION").isEmpty());
  }

  @Test
  void linesEndInCrlfAndHaveAtMost75Octets() {
    byte[] bytes = VISIT.toBytes();
    int octets = 0;
    int longest = 0;
    for (int i = 0; i < bytes.length; i++) {
      if (bytes[i] == '\r' || bytes[i] == '\n') {
        assertEquals(bytes[i] == '\r' ? '\n' : '\r', bytes[bytes[i] == '\r' ? i + 1 : i - 1]);
        longest = Math.max(longest, octets);
        octets = 0;
      } else {
        octets++;
      }
    }
    assertEquals(0, octets, "the last line ends too");
    assertTrue(longest > 70 && longest <= 75, longest + " octets");
    String text = new String(bytes, StandardCharsets.UTF_8);
    assertFalse(text.contains("\ufffd"), "a character is torn: " + text);
  }

  /** In Berlin half past two does not exist on that night, in Apia the day had begun elsewhere. */
  @ParameterizedTest
  @ValueSource(strings = {"UTC", "Europe/Berlin", "Pacific/Apia", "America/St_Johns"})
  void theSameVisitGivesTheSameBytesEverywhere(String zone) {
    byte[] here = VISIT.toBytes();
    TimeZone before = TimeZone.getDefault();
    try {
      TimeZone.setDefault(TimeZone.getTimeZone(zone));
      assertArrayEquals(here, VISIT.toBytes());
    } finally {
      TimeZone.setDefault(before);
    }
    String text = new String(here, StandardCharsets.UTF_8);
    assertTrue(text.contains("\r\nDTSTART:20260329T023000\r\n"), text);
    assertTrue(text.contains("\r\nDTEND:20260329T053500\r\n"), text);
    assertTrue(text.contains("\r\nDTSTAMP:20260329T023000Z\r\n"), text);
  }

  @Test
  void aChangedPlanReplacesTheEntryAndAnotherVisitDoesNot() throws Exception {
    VisitCalendar longer =
        new VisitCalendar(
            VISIT.title(), START, START.plusMinutes(240), List.of("more"), Optional.empty());
    VisitCalendar later =
        new VisitCalendar(
            VISIT.title(),
            START.plusDays(1),
            START.plusDays(1).plusMinutes(185),
            LINES,
            Optional.empty());
    String uid = value(events(read(VISIT)).get(0), "UID");
    assertEquals(uid, value(events(read(longer)).get(0), "UID"));
    assertNotEquals(uid, value(events(read(later)).get(0), "UID"));
    assertEquals(
        ZonedDateTime.parse("2026-03-29T02:30Z").toInstant(),
        events(read(VISIT)).get(0).getDateTimeStamp().getDate());
  }

  @Test
  void whatCannotBeIsRefused() {
    assertThrows(
        IllegalArgumentException.class,
        () -> new VisitCalendar("x", START, START, List.of(), Optional.empty()));
    assertThrows(
        IllegalArgumentException.class,
        () -> new VisitCalendar(" ", START, START.plusDays(1), List.of(), Optional.empty()));
    assertThrows(IllegalArgumentException.class, () -> new FreeGap(START, START));
    Optional<FreeGap> outside = Optional.of(new FreeGap(START, START.plusMinutes(9)));
    assertThrows(
        IllegalArgumentException.class,
        () -> new VisitCalendar("x", START, START.plusMinutes(8), List.of(), outside));
  }
}
