package foilwright.sheet;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class WithoutFontsTest {
  private static final String NO_FONTS =
      "<?xml version=\"1.0\"?><!DOCTYPE fontconfig SYSTEM \"fonts.dtd\"><fontconfig/>";

  @TempDir private Path folder;

  private Path draw(String name, Map<String, String> environment, String... options)
      throws Exception {
    Path into = Files.createDirectory(folder.resolve(name));
    List<String> command = new ArrayList<>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.addAll(List.of(options));
    command.addAll(
        List.of(
            "-Djava.awt.headless=true",
            "-cp",
            System.getProperty("java.class.path"),
            DrawWithoutFonts.class.getName(),
            into.toString()));
    ProcessBuilder builder = new ProcessBuilder(command).redirectErrorStream(true);
    builder.environment().putAll(environment);
    builder.redirectOutput(into.resolve("words").toFile());
    Process process = builder.start();
    assertTrue(process.waitFor(120, TimeUnit.SECONDS), "the process did not end");
    assertEquals(
        0, process.exitValue(), Files.readString(into.resolve("words"), StandardCharsets.UTF_8));
    return into;
  }

  @Test
  void aMachineWithoutFontsDrawsTheSameBytes() throws Exception {
    Path configuration = Files.writeString(folder.resolve("fonts.conf"), NO_FONTS);
    Path without =
        draw(
            "without",
            Map.of(
                "FONTCONFIG_FILE", configuration.toString(),
                "FONTCONFIG_PATH", folder.toString()),
            "-Duser.language=tr",
            "-Duser.timezone=Pacific/Chatham");
    Path with = draw("with", Map.of());
    for (String file : List.of("page.svg", "page.png")) {
      assertArrayEquals(
          Files.readAllBytes(with.resolve(file)), Files.readAllBytes(without.resolve(file)), file);
    }
  }
}
