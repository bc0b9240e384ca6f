package chillwright.core.kitchen;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * Labels that boxes of a lot may bear. Its boxes may have come by ways of their own: those of a
 * part that was put back bear what was made of the part, beside those that were there all along.
 */
public record BoxLabels(List<Way> ways) {
  /** Boxes of which nothing is on record. */
  public static final BoxLabels NONE = new BoxLabels(List.of(new Way(Optional.empty(), List.of())));

  public BoxLabels {
    ways = ways.stream().distinct().toList();
  }

  /**
   * What was made of boxes that came by one way.
   *
   * @param since when they came; empty for those that were there from the beginning
   * @param made the earliest first
   */
  public record Way(Optional<Instant> since, List<LabelsMade> made) {
    public Way {
      Objects.requireNonNull(since, "since");
      made = List.copyOf(made);
    }

    private boolean isThere(Instant moment) {
      return since.filter(moment::isBefore).isEmpty();
    }

    private Way until(Instant moment) {
      return new Way(since, made.stream().filter(one -> !one.at().isAfter(moment)).toList());
    }
  }

  /** What was made by a moment, on boxes that were there by then. */
  public BoxLabels until(Optional<Instant> moment) {
    return moment
        .map(
            end ->
                new BoxLabels(
                    ways.stream().filter(way -> way.isThere(end)).map(w -> w.until(end)).toList()))
        .orElse(this);
  }

  /** The same boxes, with labels that were made of them since. */
  public BoxLabels then(List<LabelsMade> more) {
    return new BoxLabels(
        ways.stream()
            .map(
                way -> {
                  List<LabelsMade> all = new ArrayList<>(way.made);
                  all.addAll(more);
                  return new Way(way.since, all);
                })
            .toList());
  }

  /** Whether nothing is known of any of them. */
  public boolean isNothing() {
    return ways.stream().allMatch(way -> way.made.isEmpty());
  }

  /**
   * What boxes handed on at a moment bear: the last that was made by then, of each way.
   *
   * @see LabelsMade#onBoxes
   */
  public List<LabelsMade> last(Instant moment) {
    return ways.stream()
        .filter(way -> way.isThere(moment))
        .flatMap(way -> LabelsMade.onBoxes(way.made, moment).stream())
        .distinct()
        .toList();
  }
}
