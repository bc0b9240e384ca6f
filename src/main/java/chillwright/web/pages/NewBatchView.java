package chillwright.web.pages;

import java.util.List;

/**
 * A batch about to be begun.
 *
 * @param warning what to look at again of the food that is chosen; blank for nothing
 */
public record NewBatchView(
    Filled form,
    List<String> foods,
    List<Choice> categories,
    List<String> words,
    List<String> places,
    List<String> pans,
    String warning) {
  private static final List<String> FOLDED =
      List.of("lot", "containers", "container", "depth", "from", "when", "note");

  /** Whether the part that is folded away is shown: when the form is back with some of it. */
  public boolean isOpen() {
    boolean isBack = !form.faults().isEmpty() || !form.asked().isEmpty();
    return isBack && FOLDED.stream().anyMatch(form::has);
  }
}
