package chillwright.web.pages;

import chillwright.core.log.Timeline;

final class Curve {
  private Curve() {}

  static String svg(Timeline timeline, Desk desk, Visitor visitor) {
    return "";
  }
}
