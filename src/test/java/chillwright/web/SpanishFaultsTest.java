package chillwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import chillwright.print.Language;
import chillwright.web.Served.Reply;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Who reads Spanish is told in Spanish what is wrong with a form. */
class SpanishFaultsTest {
  /** Where pages tell faults. */
  private static final Pattern TOLD =
      Pattern.compile(
          "(?:<p class=\"notice\" role=\"alert\"[^>]*>|<strong class=\"wrong\"[^>]*>)(.*?)</");

  /** Small words of English that no Spanish sentence has. */
  private static final Pattern ENGLISH =
      Pattern.compile(
          "(?i)\\b(the|is|are|this|that|there|of|and|or|with|give|write|missing|must|cannot|not"
              + "|name|say|text|inglés)\\b");

  @TempDir private Path folder;
  private Served served;
  private Visit visit;

  @BeforeEach
  void open() {
    served = Served.in(folder);
    visit = new Visit(served);
    visit.open("/");
    send("/ways language=es");
    send("/new-batch lot=BS-1 entry=cooked food=Caldo category=stock_or_meat_broth portions=8");
    assertThat(served.get("/api/v1/lots/BS-1").status()).isEqualTo(200);
  }

  @AfterEach
  void close() {
    served.close();
  }

  /** An address and its fields, with "+" for a blank inside one. */
  private Reply send(String form) {
    String[] parts = form.split(" ", -1);
    Map<String, String> fields = new LinkedHashMap<>();
    fields.put("token", visit.token());
    for (int i = 1; i < parts.length; i++) {
      int at = parts[i].indexOf('=');
      fields.put(parts[i].substring(0, at), parts[i].substring(at + 1).replace('+', ' '));
    }
    return visit.submit(parts[0], fields);
  }

  private static List<String> told(Reply reply) {
    assertThat(reply.status()).as(reply.text()).isBetween(400, 422);
    List<String> told =
        TOLD.matcher(reply.text())
            .results()
            .map(found -> found.group(1).replaceAll("<[^>]*>", "").strip())
            .toList();
    assertThat(told).as(reply.text()).isNotEmpty();
    return told;
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "/lots/BS-1/entries entry=reading temperature= scale=F",
        "/lots/BS-1/entries entry=reading temperature=warm scale=F",
        "/lots/BS-1/entries entry=reading temperature=4100 scale=F",
        "/lots/BS-1/entries entry=reading temperature=41.123 scale=F",
        "/lots/BS-1/entries entry=reading temperature=41 scale=",
        "/lots/BS-1/entries entry=reading temperature=41X scale=F",
        "/lots/BS-1/entries entry= temperature=41 scale=F",
        "/lots/BS-1/entries entry=coked temperature=41 scale=F",
        "/lots/BS-1/entries entry=moved",
        "/lots/BS-1/entries entry=chilled how=hard",
        "/lots/BS-1/entries entry=thawing how=quick",
        "/lots/BS-1/entries entry=portions portions=-1",
        "/lots/BS-1/entries entry=portions portions=99",
        "/lots/BS-1/entries entry=cooling depth=deep",
        "/lots/BS-1/entries entry=reading temperature=41 scale=F when=2031-01-01T10:00",
        "/lots/BS-1/entries entry=reading temperature=41 scale=F when=soonish",
        "/lots/BS-1/entries entry=reading temperature=41 scale=F when=1999-01-01T10:00",
        "/lots/BS-1/entries entry=reading temperature=41 scale=F when=2025-03-09T02:30",
        "/new-batch entry=cooked food=",
        "/new-batch entry=cooked food=Caldo category=brothh",
        "/new-batch entry=cooked food=Caldo category=soup_or_stew lot=a/b",
        "/new-batch entry=cooked food=Caldo category=soup_or_stew lot=BS-1",
        "/new-batch entry=cooked food=Caldo category=soup_or_stew from=NO-1",
        "/new-batch entry=cooked food=Caldo category=soup_or_stew containers=0",
        "/day/readings entry=reading place= temperature=41 scale=F",
        "/day/readings entry=reading place=Walk-in temperature= scale=F",
        "/day/readings entry=reading place=Walk-in temperature=cold scale=F",
        "/day/readings entry=action place=Walk-in",
        "/day/handovers by=MK",
        "/day/handovers lots=NO-1 by=MK to=AL",
        "/day/signatures word=closed",
        "/day/signatures word=reopened by=MK",
        "/kitchen/places name= kind=refrigerator",
        "/kitchen/places name=Walk-in kind=cellar",
        "/kitchen/places name=Walk-in kind=",
        "/kitchen/places name=Walk-in kind=refrigerator ownLimit=45 scale=F",
        "/kitchen/places name=Freezer kind=freezer ownLimit=40 scale=F",
        "/kitchen/foods name=",
        "/kitchen/foods name=Caldo category=brothh",
        "/kitchen/foods name=Caldo category=soup_or_stew portions=0",
        "/kitchen/people initials= name=",
        "/kitchen/probes name=",
        "/kitchen/address address=127.0.0.1",
        "/kitchen/address address=http://127.0.0.1:80",
        "/lots/BS-1/parts parts=0",
        "/lots/BS-1/correct corrects=none",
        "/plans name="
      })
  void a_bad_form_is_refused_in_spanish(String form) {
    visit.open("/lots/BS-1");
    assertThat(told(send(form)))
        .allSatisfy(line -> assertThat(line).doesNotContainPattern(ENGLISH));
  }

  @Test
  void what_was_perhaps_meant_and_figures_are_told_too() {
    visit.open("/lots/BS-1");
    assertThat(told(send("/lots/BS-1/entries entry=reading temperature=4100 scale=F")))
        .singleElement()
        .asString()
        .contains("-100 a 600 °F (-73 a 315 °C)", "¿Quiso decir 41 °F?");
  }

  @Test
  void what_has_no_spanish_is_marked_as_english() {
    assertThat(Language.SPANISH.fault("Something new is wrong."))
        .isEqualTo("No se puede tomar así (en inglés: Something new is wrong.)");
  }
}
