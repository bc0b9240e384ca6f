package chillwright.web.pages;

import chillwright.service.FeedKey;
import chillwright.service.Kitchen;
import chillwright.service.Refused;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** How phones and calendars find the kitchen: what labels lead to, and the feed of deadlines. */
final class ReachForms {
  static final String LABEL_ADDRESS = RulesPage.ADDRESS + "/address";
  static final String FEED = RulesPage.ADDRESS + "/calendar";
  static final String FEED_END = RulesPage.ADDRESS + "/calendar/end";

  private final Desk desk;
  private final SetUpPage page;

  ReachForms(Desk desk, SetUpPage page) {
    this.desk = desk;
    this.page = page;
  }

  /** Sets what the code on labels leads to. */
  void address(Context context) {
    Optional<Form> form = desk.form(context);
    if (form.isEmpty()) {
      return;
    }
    try {
      desk.kitchen().setUp().address(form.get().all());
      context.redirect(RulesPage.ADDRESS + "#reach", HttpStatus.SEE_OTHER);
    } catch (Refused refused) {
      Visitor visitor = desk.visitor(context);
      List<String> faults = EntryForm.faults(refused.problems(), desk, visitor);
      Map<String, Filled> forms = Map.of(LABEL_ADDRESS, Filled.refused(form.get().all(), faults));
      page.answer(context, HttpStatus.UNPROCESSABLE_CONTENT, visitor, forms);
    }
  }

  /** Makes the address of the feed, and shows it this once. */
  void makeFeed(Context context) {
    if (desk.form(context).isEmpty()) {
      return;
    }
    Visitor visitor = desk.visitor(context);
    String key = desk.kitchen().feedKey().make();
    String made = desk.address(context) + DeadlinesFeed.address(visitor, Optional.of(key));
    Map<String, Filled> forms = Map.of(FEED, Filled.with(Map.of("made", made)));
    page.answer(context, HttpStatus.OK, visitor, forms);
  }

  /** Ends the address of the feed. */
  void endFeed(Context context) {
    if (desk.form(context).isEmpty()) {
      return;
    }
    desk.kitchen().feedKey().end();
    context.redirect(RulesPage.ADDRESS + "#calendar", HttpStatus.SEE_OTHER);
  }

  /** What the page of the kitchen shows of it. */
  static SetUpView.Reach view(
      Desk desk, Context context, Visitor visitor, Map<String, Filled> forms) {
    Kitchen kitchen = desk.kitchen();
    FeedKey feed = kitchen.feedKey();
    Filled address = Filled.with(Map.of("address", kitchen.settings().address().orElse("")));
    String made = Optional.ofNullable(forms.get(FEED)).map(form -> form.given("made")).orElse("");
    return new SetUpView.Reach(
        forms.getOrDefault(LABEL_ADDRESS, address),
        desk.address(context),
        desk.isAddressLoopback(context),
        desk.needsKey(),
        feed.isMade(),
        made,
        DeadlinesFeed.address(visitor, Optional.empty()));
  }
}
