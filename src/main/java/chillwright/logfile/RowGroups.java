package chillwright.logfile;

import chillwright.core.log.LotId;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Which rows have to be looked at together: those of one lot, of lots that come from one another or
 * took portions of one another, and those that name one another by an id. Groups stand in the order
 * of their first rows, and the rows of a group in the order of the files.
 */
final class RowGroups {
  private final int[] order;
  private final int[] groupOfPlace;

  private RowGroups(int[] order, int[] groupOfPlace) {
    this.order = order;
    this.groupOfPlace = groupOfPlace;
  }

  /** The rows from one place of the grouped order up to another, sorted as in the files. */
  int[] rows(int start, int end) {
    int[] rows = Arrays.copyOfRange(order, start, end);
    Arrays.sort(rows);
    return rows;
  }

  /** The place after the group that the place belongs to. */
  int end(int place) {
    int end = place + 1;
    while (end < order.length && groupOfPlace[end] == groupOfPlace[place]) {
      end++;
    }
    return end;
  }

  /** The cells of a row, by column, that say what it belongs to. */
  static final class Named {
    private final RowCutter row;
    private final Map<Column, Integer> places = new EnumMap<>(Column.class);

    Named(CsvHeader header, RowCutter row) {
      this.row = row;
      for (Column column : Column.values()) {
        places.put(column, header.index(column));
      }
    }

    String given(Column column) {
      int at = places.get(column);
      return at < 0 || at >= row.cells() ? "" : Texts.trimmed(row.cell(at));
    }
  }

  /** Puts rows together as they come. */
  static final class Builder {
    /** How ids begin that are made for readings of places. */
    private static final String PLACE_ID = "place-";

    /** A longer code is cut where ids are made of it, so that two lots may make the same one. */
    private static final int LONG_CODE = LotId.LONGEST - 10;

    private final Map<String, Integer> lots = new HashMap<>();
    private final Map<String, Integer> ids = new HashMap<>();
    private final List<String[]> named = new ArrayList<>();
    private final Set<Integer> places = new LinkedHashSet<>();
    private final Set<Integer> longCodes = new LinkedHashSet<>();
    private boolean namesPlaces;
    private int[] lotOfRow = new int[1024];
    private int[] parent = new int[1024];
    private int rows;

    /** Adds the next row; its number is one more than that of the row before. */
    void add(int row, Named cells) {
      String code = cells.given(Column.LOT);
      // A reading of a place belongs to its place; no lot has a code that begins with a blank.
      String key = code.isEmpty() ? " " + cells.given(Column.PLACE) : code;
      int lot = lots.computeIfAbsent(key, k -> newLot());
      if (code.isEmpty()) {
        places.add(lot);
      } else if (code.length() > LONG_CODE) {
        longCodes.add(lot);
      }
      if (row == lotOfRow.length) {
        lotOfRow = Arrays.copyOf(lotOfRow, row + (row >> 1));
      }
      lotOfRow[row] = lot;
      rows = row + 1;
      String from = cells.given(Column.FROM);
      if (!from.isEmpty()) {
        for (String source : from.split("\\s+", -1)) {
          join(lot, lots.computeIfAbsent(source, k -> newLot()));
        }
      }
      if (!code.isEmpty() && !cells.given(Column.TO).isEmpty()) {
        named.add(new String[] {cells.given(Column.TO), key});
      }
      noteId(cells.given(Column.ID), lot, key);
      noteId(cells.given(Column.CORRECTS), lot, key);
    }

    /** Rows that give or name one id belong together; so do a made id and the lot it is made of. */
    private void noteId(String id, int lot, String key) {
      if (id.isEmpty()) {
        return;
      }
      Integer other = ids.putIfAbsent(id, lot);
      if (other != null) {
        join(lot, other);
      }
      if (id.length() == LotId.LONGEST) {
        longCodes.add(lot);
      }
      if (id.startsWith(PLACE_ID)) {
        places.add(lot);
        namesPlaces = true;
      }
      int dot = id.lastIndexOf('.');
      if (dot > 0 && !key.contentEquals(id.subSequence(0, dot))) {
        named.add(new String[] {id.substring(0, dot), key});
      }
    }

    private int newLot() {
      int lot = lots.size();
      if (lot == parent.length) {
        parent = Arrays.copyOf(parent, 2 * lot);
      }
      parent[lot] = lot;
      return lot;
    }

    private int root(int lot) {
      int root = lot;
      while (parent[root] != root) {
        parent[root] = parent[parent[root]];
        root = parent[root];
      }
      return root;
    }

    private void join(int a, int b) {
      // The lot that came first leads, so that groups keep the order of their first rows.
      int first = Math.min(root(a), root(b));
      int second = Math.max(root(a), root(b));
      parent[second] = first;
    }

    /** The lots that the rows name. */
    Set<String> codes() {
      return lots.keySet();
    }

    /** Puts lots together that belong together for a reason that the rows do not tell. */
    void join(String lot, String other) {
      join(lots.computeIfAbsent(lot, k -> newLot()), lots.computeIfAbsent(other, k -> newLot()));
    }

    private void joinAll(Set<Integer> some) {
      some.forEach(lot -> join(lot, some.iterator().next()));
    }

    RowGroups build() {
      joinAll(longCodes);
      if (namesPlaces) {
        joinAll(places);
      }
      for (String[] pair : named) {
        Integer a = lots.get(pair[0]);
        Integer b = lots.get(pair[1]);
        if (a != null && b != null) {
          join(a, b);
        }
      }
      int[] starts = new int[lots.size() + 1];
      for (int row = 0; row < rows; row++) {
        starts[root(lotOfRow[row]) + 1]++;
      }
      for (int lot = 1; lot < starts.length; lot++) {
        starts[lot] += starts[lot - 1];
      }
      int[] order = new int[rows];
      int[] groups = new int[rows];
      for (int row = 0; row < rows; row++) {
        int root = root(lotOfRow[row]);
        groups[starts[root]] = root;
        order[starts[root]++] = row;
      }
      return new RowGroups(order, groups);
    }
  }
}
