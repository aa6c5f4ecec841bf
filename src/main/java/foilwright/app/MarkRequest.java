package foilwright.app;

import java.util.List;
import java.util.Objects;

/**
 * Practice work to mark.
 *
 * @param attempts names or files of measured work
 * @param values single values, such as {@code "3 slice 7 mm"}: foil, criterion, value
 */
public record MarkRequest(
    List<String> attempts, List<String> values, PaperSize paper, SheetFormat format, boolean grey) {
  public MarkRequest {
    attempts = List.copyOf(attempts);
    values = List.copyOf(values);
    Objects.requireNonNull(paper);
    Objects.requireNonNull(format);
  }
}
