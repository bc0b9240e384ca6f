package chillwright.paper;

import java.util.List;

/**
 * What stands before the lots of a record, and below each of its pages.
 *
 * @param title of the first page
 * @param kitchen its name, also above each page
 * @param facts period, rule set and what else says how the record came about, a line each
 * @param cautions below each page
 */
public record RecordHead(String title, String kitchen, List<String> facts, List<String> cautions) {
  public RecordHead {
    facts = List.copyOf(facts);
    cautions = List.copyOf(cautions);
  }
}
