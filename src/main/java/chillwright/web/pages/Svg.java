package chillwright.web.pages;

import chillwright.print.CurveChart;
import chillwright.print.CurveChart.Dot;
import chillwright.print.CurveChart.Label;
import chillwright.print.CurveChart.Stroke;
import java.util.Locale;

/** A picture as SVG, in the ink of the page. */
final class Svg {
  private Svg() {}

  /**
   * @param title what the picture shows, for those who hear it
   */
  static String of(CurveChart chart, String title) {
    StringBuilder svg = new StringBuilder();
    svg.append(
        "<svg class=\"%s\" viewBox=\"0 0 %.0f %.0f\" role=\"img\" aria-label=\"%s\" fill=\"none\""
                .formatted(
                    chart.width() < CurveChart.WIDTH ? "narrow" : "wide",
                    chart.width(),
                    CurveChart.HEIGHT,
                    escaped(title))
            + " stroke=\"currentColor\" font-size=\"15\">");
    chart.strokes().forEach(stroke -> svg.append(of(stroke)));
    for (Dot dot : chart.dots()) {
      svg.append(
          String.format(
              Locale.ROOT,
              "<circle cx=\"%.1f\" cy=\"%.1f\" r=\"5\" fill=\"currentColor\"/>",
              dot.x(),
              dot.y()));
    }
    for (Label label : chart.labels()) {
      svg.append(
          String.format(
              Locale.ROOT,
              "<text x=\"%.1f\" y=\"%.1f\" text-anchor=\"%s\" stroke=\"none\""
                  + " fill=\"currentColor\">%s</text>",
              label.x(),
              label.y(),
              label.anchor().name().toLowerCase(Locale.ROOT),
              escaped(label.text())));
    }
    return svg.append("</svg>").toString();
  }

  private static String of(Stroke stroke) {
    String drawn =
        switch (stroke.line()) {
          case AXIS -> "stroke-width=\"1.5\"";
          case GRID -> "stroke-width=\"0.5\" stroke-opacity=\"0.4\"";
          case CURVE -> "stroke-width=\"2\"";
          case LIMIT -> "stroke-width=\"2.5\" stroke-dasharray=\"9 5\"";
          case CROSSING -> "stroke-width=\"8\" stroke-opacity=\"0.45\"";
        };
    return String.format(
        Locale.ROOT,
        "<line x1=\"%.1f\" y1=\"%.1f\" x2=\"%.1f\" y2=\"%.1f\" %s/>",
        stroke.x1(),
        stroke.y1(),
        stroke.x2(),
        stroke.y2(),
        drawn);
  }

  private static String escaped(String text) {
    return text.replace("&", "&amp;")
        .replace("<", "&lt;")
        .replace(">", "&gt;")
        .replace("\"", "&quot;");
  }
}
