package chillwright.web.pages;

import chillwright.web.pages.templates.StaticTemplates;

/** The templates of {@code src/main/jte} as methods. */
final class Templates {
  static final StaticTemplates PAGES = new StaticTemplates();

  private Templates() {}
}
