package chillwright.paper;

import chillwright.print.CurveChart;
import chillwright.print.CurveChart.Dot;
import chillwright.print.CurveChart.Label;
import chillwright.print.CurveChart.Stroke;
import java.io.IOException;

/** The picture of a lot's temperatures on paper: the same one as on its page, in black. */
final class CurveDrawing {
  private static final double LETTERS = 15;
  private static final double DOT = 3.5;

  private final CurveChart chart;
  private final double scale;

  CurveDrawing(CurveChart chart, double width) {
    this.chart = chart;
    this.scale = width / CurveChart.WIDTH;
  }

  double height() {
    return CurveChart.HEIGHT * scale;
  }

  void draw(Pen pen, double x, double y) throws IOException {
    for (Stroke stroke : chart.strokes()) {
      draw(pen, x, y, stroke);
    }
    for (Dot dot : chart.dots()) {
      pen.dot(x + dot.x() * scale, y + dot.y() * scale, DOT * scale);
    }
    Style style = Style.plain(LETTERS * scale);
    for (Label label : chart.labels()) {
      double width = pen.fonts().width(label.text()) * style.size();
      double shift =
          switch (label.anchor()) {
            case START -> 0;
            case MIDDLE -> width / 2;
            case END -> width;
          };
      pen.text(label.text(), x + label.x() * scale - shift, y + label.y() * scale, style);
    }
  }

  private void draw(Pen pen, double x, double y, Stroke stroke) throws IOException {
    double x1 = x + stroke.x1() * scale;
    double y1 = y + stroke.y1() * scale;
    double x2 = x + stroke.x2() * scale;
    double y2 = y + stroke.y2() * scale;
    switch (stroke.line()) {
      case AXIS -> pen.stroke(x1, y1, x2, y2, 1.5 * scale);
      case CURVE -> pen.stroke(x1, y1, x2, y2, 2 * scale);
      case LIMIT -> pen.stroke(x1, y1, x2, y2, 2.5 * scale, 9 * scale, 5 * scale);
      case GRID -> {
        pen.grey(0.75);
        pen.stroke(x1, y1, x2, y2, 0.5 * scale);
        pen.grey(0);
      }
      case CROSSING -> {
        pen.grey(0.55);
        pen.stroke(x1, y1, x2, y2, 8 * scale);
        pen.grey(0);
      }
    }
  }
}
