package foilwright.app;

import foilwright.drawing.Scene;
import foilwright.drawing.pdf.PdfWriter;
import foilwright.drawing.png.PngWriter;
import foilwright.drawing.svg.SvgLetters;
import foilwright.drawing.svg.SvgWriter;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.stream.IntStream;

/** A sheet with its pages, ready to become files. Pages count from 1. */
public final class DrawnSheet {
  /** 150 pixels to the inch. */
  static final double PIXELS_PER_MM = 150 / 25.4;

  private final String name;
  private final String title;
  private final List<Scene> pages;

  private DrawnSheet(String name, String title, List<Scene> pages) {
    this.name = name;
    this.title = title;
    this.pages = pages;
  }

  static DrawnSheet of(String name, String title, List<Scene> pages, boolean grey) {
    return new DrawnSheet(
        name, title, grey ? pages.stream().map(Scene::inGrey).toList() : List.copyOf(pages));
  }

  /** How many pages it has; none when the plan has nothing to put on it. */
  public int pages() {
    return pages.size();
  }

  /** What a page shows, for a person who does not see it. */
  public String description(int page) {
    Scene scene = pages.get(page - 1);
    return scene.title() + ". " + scene.description();
  }

  /** Whether a page is wider than it is high. */
  public boolean isWide(int page) {
    Scene scene = pages.get(page - 1);
    return scene.widthMm() > scene.heightMm();
  }

  /** All pages: one PDF, or a file for each. */
  public List<SheetFile> files(SheetFormat format) {
    if (pages.isEmpty()) {
      return List.of();
    }
    if (format == SheetFormat.PDF) {
      return List.of(new SheetFile(name + ".pdf", PdfWriter.write(title, pages)));
    }
    return IntStream.rangeClosed(1, pages.size()).mapToObj(page -> file(page, format)).toList();
  }

  /**
   * One page as a file.
   *
   * @throws IndexOutOfBoundsException when there is no such page
   */
  public SheetFile file(int page, SheetFormat format) {
    Scene scene = pages.get(page - 1);
    String file = (page == 1 ? name : name + "-" + page) + "." + format.words();
    return new SheetFile(
        file,
        switch (format) {
          case SVG -> SvgWriter.write(scene, SvgLetters.EMBEDDED).getBytes(StandardCharsets.UTF_8);
          case PNG -> PngWriter.write(scene, PIXELS_PER_MM);
          case PDF -> PdfWriter.write(title, List.of(scene));
        });
  }
}
