package chillwright.cli;

import chillwright.core.log.Problem;
import chillwright.core.log.Problem.Where;
import chillwright.core.log.Problem.Where.InField;
import chillwright.core.log.Problem.Where.InFile;
import chillwright.service.Imports.Imported;
import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;

/** Reads what a served kitchen answers to a file. */
final class ImportAnswer {
  private ImportAnswer() {}

  /**
   * What came of it; a problem document says that nothing was stored.
   *
   * @param file as it is known here, for the places of its faults
   */
  static Imported read(JsonNode answer, String file) {
    List<Problem> problems = new ArrayList<>();
    answer.path("problems").forEach(fault -> problems.add(problem(fault, file)));
    return new Imported(
        answer.path("rows").asLong(),
        answer.path("entries").asLong(),
        answer.path("readings").asLong(),
        answer.path("repeats").asLong(),
        answer.path("lots").asLong(),
        problems,
        answer.path("stored").asBoolean());
  }

  private static Problem problem(JsonNode fault, String file) {
    return new Problem(
        shown(fault.path("code").asText()),
        where(fault.path("where"), file),
        shown(fault.path("given").asText()),
        shown(fault.path("allowed").asText()),
        shown(fault.path("says").asText()));
  }

  private static Where where(JsonNode where, String file) {
    return where.has("line")
        ? new InFile(file, where.path("line").asLong(), shown(where.path("column").asText()))
        : new InField("", file);
  }

  /** Words from elsewhere, with nothing in them that a terminal obeys. */
  static String shown(String text) {
    return text.replaceAll("\\p{Cntrl}|[\\x{80}-\\x{9f}]", "\ufffd");
  }
}
