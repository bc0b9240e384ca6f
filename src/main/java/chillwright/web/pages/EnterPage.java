package chillwright.web.pages;

import chillwright.service.AccessKeys;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.util.List;

/** Where a browser gives the kitchen's access key, once. */
public final class EnterPage {
  public static final String ADDRESS = "/enter";

  /** The cookie that holds the key; no script can read it, and no other site make it be sent. */
  public static final String COOKIE = "access";

  private final Desk desk;
  private final AccessKeys keys;

  EnterPage(Desk desk) {
    this.desk = desk;
    this.keys = desk.kitchen().accessKeys();
  }

  void show(Context context) {
    answer(context, HttpStatus.OK, false);
  }

  private void answer(Context context, HttpStatus status, boolean wasWrong) {
    Frame frame = desk.frame(desk.visitor(context), "enter.title", ADDRESS, List.of());
    desk.answer(context, status, Templates.PAGES.enter(frame, wasWrong));
  }

  void enter(Context context) {
    String key = new Form(context.formParamMap()).text("key");
    if (key.matches("[A-Za-z0-9._~+/=-]{1,200}") && keys.isKey(key)) {
      Visitor.keep(context, COOKIE, key, true);
      context.redirect(NowPage.ADDRESS, HttpStatus.SEE_OTHER);
      return;
    }
    answer(context, HttpStatus.FORBIDDEN, true);
  }
}
