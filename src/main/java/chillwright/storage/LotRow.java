package chillwright.storage;

import static chillwright.storage.schema.Tables.LOT;

import chillwright.core.keeping.Keeping;
import chillwright.core.keeping.LotState;
import chillwright.core.keeping.LotState.JudgedBy;
import chillwright.core.keeping.LotState.Standing;
import chillwright.core.log.LotId;
import chillwright.core.log.Portions;
import chillwright.core.rules.Verdicts;
import chillwright.storage.schema.tables.records.LotRecord;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jooq.Field;
import org.jooq.TableField;

/** The state of a lot as a row, and back. */
final class LotRow {
  private static final String LINE = "\n";

  private static final List<Column<?>> COLUMNS = columns();

  private LotRow() {}

  private record Column<T>(Field<T> field, Cell<T> cell) {
    void read(ResultSet from, LotRecord into) throws SQLException {
      into.set(field, cell.get(from, 0));
    }
  }

  private static List<Column<?>> columns() {
    List<Column<?>> columns = new ArrayList<>();
    for (Field<?> field : LOT.fields()) {
      columns.add(column((TableField<?, ?>) field));
    }
    return columns;
  }

  private static <T> Column<T> column(TableField<?, T> field) {
    return new Column<>(field, Cell.of(LOT, field));
  }

  /** The row of a select that lists all columns of the table. */
  static LotRecord record(ResultSet row) throws SQLException {
    LotRecord record = new LotRecord();
    for (Column<?> column : COLUMNS) {
      column.read(row, record);
    }
    return record;
  }

  static void fill(LotRecord row, LotState state) {
    row.setCode(state.lot().text());
    row.setFood(state.food());
    row.setCategory(state.category());
    row.setNote(state.note().orElse(null));
    row.setPortionsMade(Values.count(state.portions().made()));
    row.setPortionsLeft(Values.count(state.portions().left()));
    row.setUseFirst(UseFirst.of(state));
    row.setClosedAt(state.portions().closedAt().orElse(null));
    state.standing().ifPresent(standing -> fill(row, standing));
  }

  private static void fill(LotRecord row, Standing standing) {
    row.setBeganAt(standing.beganAt());
    row.setPhase(Codes.PHASES.of(standing.phase()));
    row.setPlace(standing.place().orElse(null));
    row.setRuleSet(standing.judgedBy().ruleSet());
    row.setRuleSetVersion(standing.judgedBy().version());
    row.setLastDay(standing.lastDay().orElse(null));
    row.setOwedFromAt(standing.owedFrom().orElse(null));
    fill(row, standing.verdicts());
    fill(row, standing.keeping());
  }

  private static void fill(LotRecord row, Verdicts verdicts) {
    row.setWorst(Codes.VERDICTS.orNull(verdicts.worst()));
    row.setSettledAt(verdicts.settledAt().orElse(null));
    row.setOutFromAt(verdicts.outFrom().orElse(null));
    row.setNotShownFromAt(verdicts.notShownFrom().orElse(null));
  }

  private static void fill(LotRecord row, Keeping keeping) {
    row.setDateMarkLastDay(keeping.dateMarkLastDay().orElse(null));
    row.setMissedLastDay(keeping.lastDayMissed().orElse(null));
    row.setDaysLeftThawed(Values.count(keeping.daysLeftWhenThawed()));
    row.setChilledLastDay(keeping.chilledLastDay().orElse(null));
    row.setDiscardAt(keeping.discardAt().orElse(null));
    row.setBestQualityDay(keeping.bestQualityBy().orElse(null));
    row.setQualityLimitDay(keeping.qualityLimit().orElse(null));
    row.setGoverns(Codes.GOVERNING.orNull(keeping.governs()));
    row.setBecause(keeping.because().isEmpty() ? null : String.join(LINE, keeping.because()));
  }

  static LotState state(LotRecord row) {
    return new LotState(
        new LotId(row.getCode()),
        row.getFood(),
        row.getCategory(),
        Optional.ofNullable(row.getNote()),
        new Portions(
            Values.count(row.getPortionsMade()),
            Values.count(row.getPortionsLeft()),
            Optional.ofNullable(row.getClosedAt())),
        row.getBeganAt() == null ? Optional.empty() : Optional.of(standing(row)));
  }

  private static Standing standing(LotRecord row) {
    return new Standing(
        row.getBeganAt(),
        Codes.PHASES.word(row.getPhase()),
        Optional.ofNullable(row.getPlace()),
        new JudgedBy(row.getRuleSet(), row.getRuleSetVersion()),
        verdicts(row),
        Optional.ofNullable(row.getOwedFromAt()),
        keeping(row),
        Optional.ofNullable(row.getLastDay()));
  }

  private static Verdicts verdicts(LotRecord row) {
    return new Verdicts(
        Codes.VERDICTS.wordOrEmpty(row.getWorst()),
        Optional.ofNullable(row.getSettledAt()),
        Optional.ofNullable(row.getOutFromAt()),
        Optional.ofNullable(row.getNotShownFromAt()));
  }

  private static Keeping keeping(LotRecord row) {
    return new Keeping(
        Optional.ofNullable(row.getDateMarkLastDay()),
        Optional.ofNullable(row.getMissedLastDay()),
        Values.count(row.getDaysLeftThawed()),
        Optional.ofNullable(row.getChilledLastDay()),
        Optional.ofNullable(row.getDiscardAt()),
        Optional.ofNullable(row.getBestQualityDay()),
        Optional.ofNullable(row.getQualityLimitDay()),
        Codes.GOVERNING.wordOrEmpty(row.getGoverns()),
        row.getBecause() == null ? List.of() : List.of(row.getBecause().split(LINE)));
  }
}
