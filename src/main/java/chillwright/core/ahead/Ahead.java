package chillwright.core.ahead;

import java.util.List;
import java.util.Objects;

/**
 * The answer to a question asked ahead. It plans and never judges: a reading is always better.
 *
 * @param question its name, such as "cooling"
 * @param told the sentences, the most wanted first
 * @param cautions keys of sentences that belong to every answer of this kind
 * @param sources where its figures are printed
 */
public record Ahead(String question, List<Told> told, List<String> cautions, List<Source> sources) {
  /**
   * Where a figure is printed.
   *
   * @param what the figure is of
   * @param status verified, reported, or derived by our own arithmetic
   */
  public record Source(String what, String source, String status) {
    public Source {
      Objects.requireNonNull(what, "what");
      Objects.requireNonNull(source, "source");
      Objects.requireNonNull(status, "status");
    }
  }

  public Ahead {
    Objects.requireNonNull(question, "question");
    told = List.copyOf(told);
    cautions = List.copyOf(cautions);
    sources = List.copyOf(sources);
  }
}
