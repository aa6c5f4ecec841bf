package foilwright.document;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;

/** Every shipped document reads without a word of complaint and survives writing. */
class DocumentLibraryTest {

  @TestFactory
  Stream<DynamicTest> patterns() {
    return each(Shipped.PATTERNS, Documents::readPattern, Documents::write);
  }

  @TestFactory
  Stream<DynamicTest> guests() {
    return each(Shipped.GUESTS, Documents::readGuest, Documents::write);
  }

  @TestFactory
  Stream<DynamicTest> houses() {
    return each(Shipped.HOUSES, Documents::readHouse, Documents::write);
  }

  private static <T> Stream<DynamicTest> each(
      Path folder, Function<byte[], ReadResult<T>> read, Function<T, byte[]> write) {
    List<DynamicTest> tests = new ArrayList<>();
    for (Path file : Shipped.in(folder)) {
      tests.add(DynamicTest.dynamicTest(file.toString(), () -> readsAndWrites(file, read, write)));
    }
    return tests.stream();
  }

  private static <T> void readsAndWrites(
      Path file, Function<byte[], ReadResult<T>> read, Function<T, byte[]> write)
      throws IOException {
    ReadResult<T> first = read.apply(Files.readAllBytes(file));
    assertEquals(List.of(), first.problems().stream().map(LocatedProblem::words).toList());
    byte[] written = write.apply(first.value().orElseThrow());
    ReadResult<T> second = read.apply(written);
    assertEquals(List.of(), second.problems().stream().map(LocatedProblem::words).toList());
    assertEquals(first.value(), second.value(), text(written));
    assertEquals(text(written), text(write.apply(second.value().orElseThrow())));
  }

  private static String text(byte[] bytes) {
    return new String(bytes, StandardCharsets.UTF_8);
  }
}
