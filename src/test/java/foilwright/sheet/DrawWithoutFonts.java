package foilwright.sheet;

import foilwright.drawing.Scene;
import foilwright.drawing.png.PngWriter;
import foilwright.drawing.svg.SvgLetters;
import foilwright.drawing.svg.SvgWriter;
import foilwright.head.HeadKind;
import java.nio.file.Files;
import java.nio.file.Path;

/** Draws a map in a process of its own, for a machine without any font. */
final class DrawWithoutFonts {
  private DrawWithoutFonts() {}

  public static void main(String[] arguments) throws Exception {
    Path folder = Path.of(arguments[0]);
    Scene page = SampleMaps.pages("fringe-veil", HeadKind.WOMAN).get(0);
    Files.writeString(folder.resolve("page.svg"), SvgWriter.write(page, SvgLetters.EMBEDDED));
    Files.write(folder.resolve("page.png"), PngWriter.write(page, 4));
  }
}
