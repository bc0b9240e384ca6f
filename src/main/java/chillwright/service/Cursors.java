package chillwright.service;

import chillwright.storage.Slice;
import chillwright.storage.Slice.Position;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Base64;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/** Places in a list as text that its reader hands back unread. */
final class Cursors {
  private static final String BETWEEN = ".";

  private Cursors() {}

  /** A page of a list, with a cursor that fits only lists of that name. */
  static <T, R> Page<R> page(String list, Slice<T> slice, Function<List<T>, List<R>> shown) {
    return new Page<>(
        shown.apply(slice.items()), slice.next().map(position -> text(list, position)));
  }

  private static String text(String list, Position position) {
    String plain =
        String.join(
            BETWEEN,
            list,
            Long.toString(position.order()),
            Long.toString(position.row()),
            Long.toString(position.seq()));
    return Base64.getUrlEncoder()
        .withoutPadding()
        .encodeToString(plain.getBytes(StandardCharsets.UTF_8));
  }

  /**
   * @throws Refused if the cursor is none of that list
   */
  static Optional<Position> position(String list, Page.Wanted wanted) {
    return wanted.cursor().map(cursor -> read(list, cursor).orElseThrow(() -> refusal(cursor)));
  }

  private static Optional<Position> read(String list, String cursor) {
    try {
      byte[] plain = Base64.getUrlDecoder().decode(cursor);
      String[] parts = new String(plain, StandardCharsets.UTF_8).split("\\" + BETWEEN, -1);
      if (parts.length != 4 || !parts[0].equals(list)) {
        return Optional.empty();
      }
      long[] numbers = Arrays.stream(parts).skip(1).mapToLong(Long::parseLong).toArray();
      return Optional.of(new Position(numbers[0], numbers[1], numbers[2]));
    } catch (IllegalArgumentException e) {
      return Optional.empty();
    }
  }

  private static Refused refusal(String cursor) {
    return Refused.field(
        Refused.Why.FAULTS,
        Refused.problem(
            "unknown-cursor",
            "/cursor",
            cursor.length() > Page.MOST ? cursor.substring(0, Page.MOST) : cursor,
            "the \"next\" of a page of the same list",
            "This cursor is not of this list. Begin again without one."));
  }
}
