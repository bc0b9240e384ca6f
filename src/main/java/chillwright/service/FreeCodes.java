package chillwright.service;

import chillwright.core.log.LotId;
import chillwright.storage.Session;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;

/** Codes that no lot has yet, short enough to write on tape. */
final class FreeCodes {
  private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("yyMMdd", Locale.ROOT);

  private FreeCodes() {}

  /** The day and a number, such as 260302-4. */
  static LotId ofDay(Session session, LocalDate day) {
    String start = DAY.format(day) + "-";
    return some(session, start, session.lots().codesBeginning(start).size() + 1, 1).get(0);
  }

  /** For parts of a lot: its code and a number, such as SOUP-2; where that is too long, the day. */
  static List<LotId> ofParts(Session session, LotId lot, LocalDate day, int count) {
    String start = lot + "-";
    boolean isShort = LotId.isCode(start + "9999");
    return some(session, isShort ? start : DAY.format(day) + "-", 1, count);
  }

  private static List<LotId> some(Session session, String start, int from, int count) {
    Set<String> used = session.lots().codesBeginning(start);
    List<LotId> free = new ArrayList<>();
    for (int number = from; free.size() < count; number++) {
      if (!used.contains(start + number)) {
        free.add(new LotId(start + number));
      }
    }
    return free;
  }
}
