package chillwright.paper;

import chillwright.paper.Flow.Column;
import java.io.IOException;
import java.util.List;

/** A plan on paper, with a box to tick beside each thing that is done. */
public final class RunSheetPaper {
  private static final Style HEADING = Style.bold(12.5);
  private static final Style TEXT = Style.plain(10);
  private static final Style STRONG = Style.bold(10);
  private static final Style SMALL = Style.plain(7.5);
  private static final double BOX = 9;

  /** Parts of the width beside the box, for time, dish, step and what is held. */
  private static final double[] COLUMNS = {0.22, 0.24, 0.34, 0.2};

  private static final double INDENT = 18;

  private final Words words;
  private final Flow flow;

  private RunSheetPaper(Words words, Flow flow) {
    this.words = words;
    this.flow = flow;
  }

  /** The sheet as PDF. */
  public static byte[] of(RunSheet sheet, Words words) {
    return Pages.of(
        sheet.head(),
        sheet.size(),
        words,
        flow -> {
          Pages.head(sheet.head(), flow);
          new RunSheetPaper(words, flow).body(sheet);
        });
  }

  private void body(RunSheet sheet) throws IOException {
    for (String problem : sheet.problems()) {
      flow.text(problem, STRONG);
    }
    for (RunSheet.Day day : sheet.days()) {
      flow.space(10);
      flow.need(60);
      flow.text(day.title(), HEADING);
      flow.rule();
      for (RunSheet.Task task : day.tasks()) {
        task(task);
      }
    }
    part("plans.pans", sheet.pans(), TEXT);
    for (RunSheet.Week week : sheet.shopping()) {
      shopping(week);
    }
    part("plans.bounds", sheet.bounds(), SMALL);
  }

  private void task(RunSheet.Task task) throws IOException {
    flow.need(34);
    flow.drawing(0, RunSheetPaper::tick);
    double width = flow.width() - INDENT;
    flow.row(
        List.of(
            new Column(INDENT, "", TEXT, false),
            new Column(width * COLUMNS[0], task.clock(), STRONG, false),
            new Column(width * COLUMNS[1], task.dish(), STRONG, false),
            new Column(width * COLUMNS[2], task.step(), TEXT, false),
            new Column(width * COLUMNS[3], task.uses(), TEXT, false)));
    flow.text(task.reason(), INDENT, SMALL);
    flow.space(4);
  }

  private void shopping(RunSheet.Week week) throws IOException {
    flow.space(10);
    flow.need(60);
    flow.text(week.title(), HEADING);
    flow.rule();
    for (String line : week.lines()) {
      flow.need(20);
      flow.drawing(0, RunSheetPaper::tick);
      flow.text(line, INDENT, TEXT);
      flow.space(3);
    }
  }

  /** An empty square, to be ticked by hand. */
  private static void tick(Pen pen, double x, double y) throws IOException {
    double top = y + 1.5;
    pen.stroke(x, top, x + BOX, top, 0.8);
    pen.stroke(x, top + BOX, x + BOX, top + BOX, 0.8);
    pen.stroke(x, top, x, top + BOX, 0.8);
    pen.stroke(x + BOX, top, x + BOX, top + BOX, 0.8);
  }

  private void part(String title, List<String> lines, Style style) throws IOException {
    if (lines.isEmpty()) {
      return;
    }
    flow.space(10);
    flow.need(50);
    flow.text(words.say(title), HEADING);
    flow.rule();
    for (String line : lines) {
      flow.text(line, style);
      flow.space(2);
    }
  }
}
