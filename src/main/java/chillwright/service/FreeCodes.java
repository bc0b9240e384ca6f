package chillwright.service;

import chillwright.core.log.LotId;
import chillwright.storage.Session;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.function.IntFunction;

/** Codes that no lot has yet, short enough to write on tape. */
final class FreeCodes {
  private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("yyMMdd", Locale.ROOT);

  /** Without those that are easily taken for a figure. */
  private static final String LETTERS = "ABCDEFGHJKLMNPQRSTUVWXYZ";

  private FreeCodes() {}

  /**
   * The day and a letter, such as 260302-B: parts have numbers, so that nobody takes the second
   * batch of a day for a part of the first.
   */
  static LotId ofDay(Session session, LocalDate day) {
    return some(session, DAY.format(day) + "-", FreeCodes::letters, 1).get(0);
  }

  /** For parts of a lot: its code and a number, such as SOUP-2; where that is too long, the day. */
  static List<LotId> ofParts(Session session, LotId lot, LocalDate day, int count) {
    String start = lot + "-";
    boolean isShort = LotId.isCode(start + "9999");
    return isShort
        ? some(session, start, Integer::toString, count)
        : some(session, DAY.format(day) + "-", FreeCodes::letters, count);
  }

  /** A to Y, then ZA to ZY, ZZA and so on: they sort as they were given. */
  private static String letters(int number) {
    int last = (number - 1) % (LETTERS.length() - 1);
    int before = (number - 1) / (LETTERS.length() - 1);
    return "Z".repeat(before) + LETTERS.charAt(last);
  }

  private static List<LotId> some(
      Session session, String start, IntFunction<String> ending, int count) {
    Set<String> used = session.lots().codesBeginning(start);
    List<LotId> free = new ArrayList<>();
    for (int number = 1; free.size() < count; number++) {
      String code = start + ending.apply(number);
      if (!used.contains(code)) {
        free.add(new LotId(code));
      }
    }
    return free;
  }
}
