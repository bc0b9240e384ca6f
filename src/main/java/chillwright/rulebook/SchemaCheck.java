package chillwright.rulebook;

import chillwright.core.log.Problem;
import com.networknt.schema.Error;
import com.networknt.schema.SchemaLocation;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Holds a file against its JSON schema, and says each fault so that a cook can mend it. */
enum SchemaCheck {
  RULE_SET("ruleset"),
  TOPIC("topic"),
  KEEPING("keeping"),
  PLAN("plan");

  private final String address;

  SchemaCheck(String name) {
    address = "classpath:rulebook/" + name + ".schema.json";
  }

  /** Loaded with the first file that needs it, since that takes longer than all other reading. */
  private static final class Schemas {
    static final SchemaRegistry REGISTRY =
        SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12);
  }

  /** Every fault of the file; a file of this jar has none, as the build has shown. */
  List<Problem> faults(Document document) {
    return document.isProven() ? List.of() : allFaults(document);
  }

  /** Every fault of the file, one for each place. */
  List<Problem> allFaults(Document document) {
    Map<Problem.Where, Problem> first = new LinkedHashMap<>();
    List<Error> errors =
        Schemas.REGISTRY
            .getSchema(SchemaLocation.of(address))
            .validate(
                document.root(),
                context -> context.executionConfig(config -> config.formatAssertionsEnabled(true)));
    for (Error error : errors) {
      Problem problem = problem(document.file(), error);
      first.putIfAbsent(problem.where(), problem);
    }
    return List.copyOf(first.values());
  }

  private static Problem problem(String file, Error error) {
    return switch (error.getKeyword()) {
      case "required" -> missing(file, error, error.getProperty());
      case "dependentRequired" -> missing(file, error, error.getArguments()[0].toString());
      case "additionalProperties" -> unknown(file, error);
      case "propertyNames" -> wrongKey(file, error);
      default -> wrong(file, error);
    };
  }

  private static Problem missing(String file, Error error, String key) {
    String allowed = SchemaText.describe(error.getSchemaLocation(), key);
    return problem("missing-key", file, pointer(error, key), "", allowed, "this key is missing");
  }

  private static Problem unknown(String file, Error error) {
    String key = error.getProperty();
    String keys = String.join(", ", SchemaText.keys(error.getSchemaLocation()));
    String pointer = pointer(error, key);
    return new Problem(
        "unknown-key",
        new Problem.Where.InField(file, pointer),
        key,
        keys,
        Spot.named(file, pointer)
            + ": no such key is known here. Check its spelling, or take it out; known are "
            + keys
            + ".");
  }

  private static Problem wrongKey(String file, Error error) {
    String key = error.getProperty();
    String allowed = SchemaText.describe(error.getSchemaLocation().append("pattern"));
    return problem("wrong-key", file, pointer(error, key), key, allowed, "this key does not fit");
  }

  private static Problem wrong(String file, Error error) {
    String given = Spot.shown(error.getInstanceNode());
    String allowed = SchemaText.describe(error.getSchemaLocation());
    return problem(
        "wrong-value", file, pointer(error), given, allowed, given + " does not fit here");
  }

  private static Problem problem(
      String code, String file, String pointer, String given, String allowed, String what) {
    return new Problem(
        code,
        new Problem.Where.InField(file, pointer),
        given,
        allowed,
        Spot.named(file, pointer) + ": " + what + ". Write " + allowed + ".");
  }

  private static String pointer(Error error) {
    return error.getInstanceLocation().toString();
  }

  private static String pointer(Error error, String key) {
    return pointer(error) + "/" + Spot.escaped(key);
  }
}
