package foilwright.head;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Reads the reference tables of the tests: rows by column name; no quoting but of one field. */
public final class Csv {
  private Csv() {}

  public static List<Map<String, String>> rows(String resource) {
    try (InputStream in = Csv.class.getResourceAsStream(resource)) {
      if (in == null) {
        throw new IllegalArgumentException("no resource " + resource);
      }
      BufferedReader reader = new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8));
      List<String> header = fields(reader.readLine());
      List<Map<String, String>> rows = new ArrayList<>();
      for (String line = reader.readLine(); line != null; line = reader.readLine()) {
        List<String> fields = fields(line);
        Map<String, String> row = new HashMap<>();
        for (int i = 0; i < header.size(); i++) {
          row.put(header.get(i), fields.get(i));
        }
        rows.add(row);
      }
      return rows;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static List<String> fields(String line) {
    List<String> fields = new ArrayList<>();
    StringBuilder field = new StringBuilder();
    boolean quoted = false;
    for (int i = 0; i < line.length(); i++) {
      char c = line.charAt(i);
      if (c == '"') {
        quoted = !quoted;
      } else if (c == ',' && !quoted) {
        fields.add(field.toString());
        field.setLength(0);
      } else {
        field.append(c);
      }
    }
    fields.add(field.toString());
    return fields;
  }
}
