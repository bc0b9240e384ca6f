package chillwright.core.ahead;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;

/**
 * So many portions for a season of orders, made in batches and frozen, none so early that it is
 * past its best when it is eaten.
 *
 * @param portions still to be made, from 0
 * @param batch portions in one batch, from 1
 * @param perDay batches that can be made and frozen in a day, from 1
 * @param today the first day on which one can be made
 * @param lastOut the last day on which food leaves; the last batch is frozen the day before
 * @param goodUntil the day until which the last of it must be at its best
 * @param months of best quality in the freezer, from 1
 */
public record Season(
    int portions,
    int batch,
    int perDay,
    LocalDate today,
    LocalDate lastOut,
    LocalDate goodUntil,
    int months) {
  /** How many batches it takes. */
  public int batches() {
    return (portions + batch - 1) / batch;
  }

  /** The first day on which a batch may be frozen: its months run out on the last day or later. */
  public LocalDate earliest() {
    LocalDate day = goodUntil.minusMonths(months);
    while (day.plusMonths(months).isBefore(goodUntil)) {
      day = day.plusDays(1);
    }
    return day.isBefore(today) ? today : day;
  }

  /** The last day on which one can be frozen. */
  public LocalDate latest() {
    return lastOut.minusDays(1);
  }

  /** The last day to begin, so that all are frozen by then. */
  public LocalDate beginBy() {
    int days = (batches() + perDay - 1) / perDay;
    return latest().minusDays(Math.max(1, days) - 1L);
  }

  /** How many batches can be made in the days there are. */
  public long room() {
    long days = ChronoUnit.DAYS.between(earliest(), latest()) + 1;
    return Math.max(0, days) * perDay;
  }

  /** Days from one batch to the next where they are spread evenly; 0 where two share a day. */
  public long spread() {
    long days = ChronoUnit.DAYS.between(earliest(), latest());
    return batches() < 2 || days < 0 ? 0 : days / (batches() - 1);
  }
}
