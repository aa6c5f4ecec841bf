package foilwright.sheet;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import foilwright.drawing.Box;
import foilwright.drawing.Mark;
import foilwright.drawing.Part;
import foilwright.drawing.Role;
import foilwright.drawing.Scene;
import foilwright.drawing.Typeface;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** What holds for every sheet. */
final class SheetChecks {
  private SheetChecks() {}

  /** No number or pointer over another, nor over any words. */
  static void labelsAreClear(Scene page) {
    Map<String, Box> boxes = new LinkedHashMap<>();
    for (Mark mark : page.marks()) {
      if (mark.role() == Role.PROBLEM) {
        boxes.put(mark.id(), mark.bounds());
        continue;
      }
      int line = 0;
      for (Part part : mark.parts()) {
        if (part instanceof Part.Lettering) {
          boxes.put(mark.id() + " line " + ++line, part.bounds());
        }
      }
    }
    List<String> ids = List.copyOf(boxes.keySet());
    for (int i = 0; i < ids.size(); i++) {
      for (int j = i + 1; j < ids.size(); j++) {
        assertFalse(
            boxes.get(ids.get(i)).overlaps(boxes.get(ids.get(j))),
            ids.get(i) + " over " + ids.get(j));
      }
    }
  }

  /** Every mark inside the margin, every capital at least 2.2 mm high. */
  static void everythingIsOnThePaper(Scene page) {
    for (Mark mark : page.marks()) {
      assertTrue(page.paper().grown(-5).contains(mark.bounds()), mark.id() + mark.bounds());
      for (Part part : mark.parts()) {
        if (part instanceof Part.Lettering lettering) {
          double capitals = Typeface.shipped().capHeight(lettering.size());
          assertTrue(capitals >= 2.2, mark.id());
        }
      }
    }
  }

  static void noHeadingIsCutShort(Scene page) {
    for (Mark mark : page.marks()) {
      for (Part part : mark.parts()) {
        assertFalse(
            mark.role() == Role.HEADING
                && part instanceof Part.Lettering lettering
                && lettering.text().endsWith("\u2026"),
            mark.id());
      }
    }
  }

  /** All words of a page, in the order of its marks. */
  static String words(Scene page) {
    StringBuilder words = new StringBuilder();
    for (Mark mark : page.marks()) {
      for (Part part : mark.parts()) {
        if (part instanceof Part.Lettering lettering) {
          words.append(lettering.text()).append(' ');
        }
      }
    }
    return words.toString();
  }
}
