package foilwright.document;

import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.nio.charset.StandardCharsets;

/** The shipped schemas in a validator that knows nothing of this program. */
final class Schemas {
  private static final SchemaRegistry REGISTRY =
      SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12);
  private static final Schema PATTERN = REGISTRY.getSchema(Documents.schema("pattern"));
  private static final Schema GUEST = REGISTRY.getSchema(Documents.schema("guest"));
  private static final Schema HOUSE = REGISTRY.getSchema(Documents.schema("house"));

  private static final Schema ATTEMPT = REGISTRY.getSchema(Documents.schema("attempt"));

  private Schemas() {}

  /** The name starts with the kind of document. */
  static boolean accepts(String name, byte[] bytes) {
    Schema schema =
        name.startsWith("attempt")
            ? ATTEMPT
            : name.startsWith("guest") ? GUEST : name.startsWith("house") ? HOUSE : PATTERN;
    String text = new String(bytes, StandardCharsets.UTF_8);
    return schema
        .validate(text.startsWith("\ufeff") ? text.substring(1) : text, InputFormat.JSON)
        .isEmpty();
  }
}
