package chillwright.logfile;

import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.OptionalLong;

/** How a time is written, shown with the offset from UTC that the kitchen has. */
public record TimeExample(ZoneId zone) {
  private static final LocalDateTime AFTERNOON = LocalDateTime.of(2026, 3, 2, 14, 5);

  /** What may stand where a time is asked for. */
  public String allowed() {
    return "date, time and offset from UTC, such as %s or %s:00Z"
        .formatted(text(), AFTERNOON.minusSeconds(offset(AFTERNOON).getTotalSeconds()));
  }

  /** A whole time. */
  public String text() {
    return AFTERNOON + ":00" + id(offset(AFTERNOON));
  }

  /** A time that lacks its offset, with that which the kitchen's clocks had then. */
  public String with(String given) {
    OptionalLong millis = Times.millis(given + "Z");
    LocalDateTime local =
        millis.isPresent()
            ? LocalDateTime.ofEpochSecond(
                Math.floorDiv(millis.getAsLong(), 1000L), 0, ZoneOffset.UTC)
            : AFTERNOON;
    return given + id(offset(local));
  }

  private ZoneOffset offset(LocalDateTime local) {
    return zone.getRules().getOffset(local);
  }

  private static String id(ZoneOffset offset) {
    return offset.equals(ZoneOffset.UTC) ? "+00:00" : offset.getId();
  }
}
