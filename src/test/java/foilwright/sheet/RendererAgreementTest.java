package foilwright.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import foilwright.drawing.Scene;
import foilwright.drawing.pdf.PdfWriter;
import foilwright.drawing.png.PngWriter;
import foilwright.drawing.svg.SvgLetters;
import foilwright.drawing.svg.SvgWriter;
import foilwright.head.HeadKind;
import java.awt.Color;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.File;
import java.io.IOException;
import java.io.StringReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import org.apache.batik.transcoder.TranscoderInput;
import org.apache.batik.transcoder.TranscoderOutput;
import org.apache.batik.transcoder.image.PNGTranscoder;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * One map in independent renderers: as SVG in three, as PDF in two, and as the own picture.
 * Pictures are compared as blocks of half a millimetre, where differences of anti-aliasing and of
 * hinting average out.
 */
class RendererAgreementTest {
  private static final int PIXELS_PER_MM = 8;
  private static final int BLOCKS_PER_MM = 2;

  /** Largest mean difference, and share of blocks that differ by more than a quarter. */
  private static final double MEAN = 0.004;

  private static final double FAR_APART = 2e-5;

  /** For sheets of boxes: some renderers move level and upright lines by half a pixel. */
  private static final double MEAN_OF_BOXES = 0.006;

  @TempDir private Path folder;

  private static final Scene PAGE = SampleMaps.pages("diagonals-back", HeadKind.WOMAN).get(0);

  /** Batik's picture of the page with outlined letters, and the own one: what others are beside. */
  private static BufferedImage byBatik;

  private static BufferedImage ownPicture;

  @BeforeAll
  static void paint() throws Exception {
    byBatik = batik(PAGE, SvgLetters.OUTLINED);
    ownPicture = own(PAGE);
  }

  private static BufferedImage batik(Scene page, SvgLetters letters) throws Exception {
    PNGTranscoder transcoder = new PNGTranscoder();
    transcoder.addTranscodingHint(
        PNGTranscoder.KEY_PIXEL_UNIT_TO_MILLIMETER, (float) (1.0 / PIXELS_PER_MM));
    transcoder.addTranscodingHint(PNGTranscoder.KEY_BACKGROUND_COLOR, Color.WHITE);
    ByteArrayOutputStream png = new ByteArrayOutputStream();
    transcoder.transcode(
        new TranscoderInput(new StringReader(SvgWriter.write(page, letters))),
        new TranscoderOutput(png));
    return ImageIO.read(new ByteArrayInputStream(png.toByteArray()));
  }

  private static BufferedImage own(Scene page) throws IOException {
    return ImageIO.read(new ByteArrayInputStream(PngWriter.write(page, PIXELS_PER_MM)));
  }

  @Test
  void batikSetsTextAsItsShapes() throws Exception {
    assertAgree(byBatik, batik(PAGE, SvgLetters.EMBEDDED));
  }

  @Test
  void ownPictureAgrees() throws Exception {
    assertAgree(byBatik, ownPicture);
  }

  @Test
  void pdfAgreesInPdfBox() throws Exception {
    Scene page = PAGE;
    try (PDDocument document = Loader.loadPDF(PdfWriter.write(page.title(), List.of(page)))) {
      float dpi = (float) (PIXELS_PER_MM * 25.4);
      assertAgree(ownPicture, new PDFRenderer(document).renderImageWithDPI(0, dpi));
    }
  }

  @Test
  void pdfAgreesInPoppler() throws Exception {
    Scene page = PAGE;
    Path pdf = folder.resolve("page.pdf");
    Files.write(pdf, PdfWriter.write(page.title(), List.of(page)));
    String dpi = Double.toString(PIXELS_PER_MM * 25.4);
    String name = folder.resolve("poppler").toString();
    run("pdftoppm", "-png", "-singlefile", "-r", dpi, pdf.toString(), name);
    assertAgree(ownPicture, ImageIO.read(new File(name + ".png")));
  }

  private static Stream<Scene> others() {
    return SampleSheets.of("diagonals-back", HeadKind.TRAINING_HEAD).values().stream();
  }

  @ParameterizedTest
  @MethodSource("others")
  void everyOtherSheetAgreesAsPictureSvgAndPdf(Scene page) throws Exception {
    BufferedImage own = own(page);
    assertAgree(
        own,
        isInstalled("rsvg-convert") ? librsvg(page) : batik(page, SvgLetters.OUTLINED),
        MEAN_OF_BOXES);
    try (PDDocument document = Loader.loadPDF(PdfWriter.write(page.title(), List.of(page)))) {
      assertAgree(
          own,
          new PDFRenderer(document).renderImageWithDPI(0, (float) (PIXELS_PER_MM * 25.4)),
          MEAN_OF_BOXES);
    }
  }

  @Test
  void librsvgAgrees() throws Exception {
    assertAgree(byBatik, librsvg(PAGE));
  }

  private BufferedImage librsvg(Scene page) throws Exception {
    Path svg =
        Files.writeString(folder.resolve("page.svg"), SvgWriter.write(page, SvgLetters.OUTLINED));
    Path png = folder.resolve("page.png");
    String dpi = Double.toString(PIXELS_PER_MM * 25.4);
    run("rsvg-convert", "-d", dpi, "-p", dpi, "-b", "white", "-o", png.toString(), svg.toString());
    return ImageIO.read(png.toFile());
  }

  @Test
  void chromiumAgrees() throws Exception {
    Scene page = PAGE;
    Path html = folder.resolve("page.html");
    int width = (int) (page.widthMm() * PIXELS_PER_MM);
    int height = (int) (page.heightMm() * PIXELS_PER_MM);
    Files.writeString(
        html,
        "<!doctype html><meta charset=utf-8><style>body{margin:0}svg{display:block;width:"
            + width
            + "px;height:"
            + height
            + "px}</style>"
            + SvgWriter.write(page, SvgLetters.EMBEDDED));
    Path png = folder.resolve("page.png");
    run(
        "chromium",
        "--headless",
        "--no-sandbox",
        "--disable-gpu",
        "--hide-scrollbars",
        "--force-device-scale-factor=1",
        "--user-data-dir=" + folder.resolve("profile"),
        "--window-size=" + width + "," + height,
        "--screenshot=" + png,
        html.toUri().toString());
    assertAgree(byBatik, ImageIO.read(png.toFile()));
  }

  private static boolean isInstalled(String program) {
    return Stream.of(System.getenv("PATH").split(File.pathSeparator, -1))
        .anyMatch(place -> Files.isExecutable(Path.of(place, program)));
  }

  private static void run(String... command) throws Exception {
    assumeTrue(isInstalled(command[0]), command[0] + " is not installed");
    Process process =
        new ProcessBuilder(List.of(command))
            .redirectErrorStream(true)
            .redirectOutput(ProcessBuilder.Redirect.DISCARD)
            .start();
    assertTrue(process.waitFor(60, TimeUnit.SECONDS), command[0] + " did not end");
    assertEquals(0, process.exitValue(), command[0]);
  }

  private static void assertAgree(BufferedImage one, BufferedImage other) {
    assertAgree(one, other, MEAN);
  }

  private static void assertAgree(BufferedImage one, BufferedImage other, double most) {
    assertEquals(one.getWidth(), other.getWidth(), 2);
    assertEquals(one.getHeight(), other.getHeight(), 2);
    int columns = one.getWidth() * BLOCKS_PER_MM / PIXELS_PER_MM;
    int rows = one.getHeight() * BLOCKS_PER_MM / PIXELS_PER_MM;
    double[][] blocksOfOne = blocks(one, columns, rows);
    double[][] blocksOfOther = blocks(other, columns, rows);
    double sum = 0;
    int far = 0;
    for (int c = 0; c < columns - 1; c++) {
      for (int r = 0; r < rows - 1; r++) {
        double difference = 0;
        for (int channel = 0; channel < 3; channel++) {
          int at = 3 * c + channel;
          difference = Math.max(difference, Math.abs(blocksOfOne[r][at] - blocksOfOther[r][at]));
        }
        sum += difference;
        far += difference > 0.25 ? 1 : 0;
      }
    }
    double mean = sum / (columns * rows);
    double share = (double) far / (columns * rows);
    assertTrue(mean <= most, "mean difference " + mean);
    assertTrue(share <= FAR_APART, "share of blocks far apart " + share);
  }

  /** Mean red, green and blue of each block, by rows of blocks. */
  private static double[][] blocks(BufferedImage image, int columns, int rows) {
    int size = PIXELS_PER_MM / BLOCKS_PER_MM;
    double[][] blocks = new double[rows][3 * columns];
    int width = Math.min(image.getWidth(), columns * size);
    int[] line = new int[width];
    for (int y = 0; y < Math.min(image.getHeight(), rows * size); y++) {
      image.getRGB(0, y, width, 1, line, 0, width);
      double[] row = blocks[y / size];
      for (int x = 0; x < width; x++) {
        int at = 3 * (x / size);
        row[at] += line[x] >> 16 & 0xff;
        row[at + 1] += line[x] >> 8 & 0xff;
        row[at + 2] += line[x] & 0xff;
      }
    }
    for (double[] row : blocks) {
      for (int i = 0; i < row.length; i++) {
        row[i] /= size * size * 255.0;
      }
    }
    return blocks;
  }
}
