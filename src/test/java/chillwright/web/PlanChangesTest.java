package chillwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import chillwright.web.Served.Reply;
import com.fasterxml.jackson.databind.JsonNode;
import java.net.http.HttpRequest.BodyPublishers;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is saved of a plan stays, whoever else saves; by definition, no source. */
class PlanChangesTest {
  private static final String SUPPER =
      """
      {"serving": "2026-03-10T18:00:00Z", "zone": "UTC", "from": "2026-03-01T08:00:00Z",
       "guests": 20, "dishes": [
        {"dish": "Leek soup", "category": "soup_or_stew", "route": "chilled", "portions": 20,
         "make": [{"step": "simmer", "minutes": 60}]},
        {"dish": "Bean soup", "category": "soup_or_stew", "route": "chilled", "portions": 20,
         "make": [{"step": "simmer", "minutes": 60}]}]}
      """;

  @TempDir private Path folder;
  private Served served;
  private Visit visit;

  @BeforeEach
  void serve() {
    served = Served.in(folder);
    served.at("2026-03-07T08:00:00Z");
    keep();
    visit = new Visit(served);
  }

  private void keep() {
    served.send(
        served
            .request("/api/v1/plans/supper", "Content-Type", "application/json")
            .PUT(BodyPublishers.ofString(SUPPER)));
  }

  @AfterEach
  void close() {
    served.close();
  }

  private static Reply dish(Visit by, String was, String dish, int portions) {
    by.open("/plans/supper");
    return by.submit(
        "/plans/supper/dishes",
        "was",
        was,
        "dish",
        dish,
        "category",
        "soup_or_stew",
        "route",
        "chilled",
        "portions",
        String.valueOf(portions),
        "make/0/step",
        "simmer",
        "make/0/minutes",
        "60");
  }

  private JsonNode dishes() {
    return served.get("/api/v1/plans/supper").json().path("dishes");
  }

  @Test
  void a_name_that_another_dish_has_moves_no_lots() {
    String rows =
        """
        lot,food,category,when,entry,temperature,portions
        SO-1,Pond soup,soup_or_stew,2026-03-06T08:00:00Z,cooked,180F,20
        SO-1,,,2026-03-06T09:00:00Z,chilled,40F,
        """;
    assertThat(served.postCsv("/api/v1/imports", rows).status()).isLessThan(300);
    visit.open("/plans/supper");
    visit.submit("/plans/supper/batches", "dish", "Leek soup", "lot", "SO-1");
    assertThat(dishes().at("/0/lots").toString()).isEqualTo("[\"SO-1\"]");
    assertThat(dish(visit, "Bean soup", "Leek soup", 20).status()).isEqualTo(422);
    assertThat(dishes().at("/0/lots").toString()).isEqualTo("[\"SO-1\"]");
    assertThat(dishes().at("/1/lots")).isEmpty();
    assertThat(dish(visit, "Leek soup", "Onion soup", 20).status()).isEqualTo(303);
    assertThat(dishes().at("/0/dish").asText()).isEqualTo("Onion soup");
    assertThat(dishes().at("/0/lots").toString()).isEqualTo("[\"SO-1\"]");
  }

  /** Of a food that is called as its dish: followed by its name, until it is taken away. */
  @Test
  void a_lot_that_was_taken_away_is_not_followed_by_its_name() {
    served.at("2026-03-07T20:00:00Z");
    String rows =
        """
        lot,food,category,when,entry,temperature,portions
        LE-1,Leek soup,soup_or_stew,2026-03-07T09:00:00Z,cooked,180F,20
        LE-1,,,2026-03-07T10:00:00Z,chilled,40F,
        """;
    assertThat(served.postCsv("/api/v1/imports", rows).status()).isLessThan(300);
    assertThat(makes()).as("followed").isFalse();
    visit.open("/plans/supper");
    visit.submit("/plans/supper/batches", "dish", "Leek soup", "lot", "LE-1");
    assertThat(makes()).as("linked").isFalse();
    visit.submit("/plans/supper/batches", "dish", "Leek soup", "remove", "LE-1");
    assertThat(makes()).as("taken away").isTrue();
    visit.submit("/plans/supper/batches", "dish", "Leek soup", "lot", "LE-1");
    assertThat(makes()).as("linked again").isFalse();
  }

  /** Whether the plan has leek soup still to be made. */
  private boolean makes() {
    for (JsonNode task : served.get("/api/v1/plans/supper").json().path("tasks")) {
      if (task.path("dish").asText().equals("Leek soup")
          && task.path("kind").asText().equals("make")) {
        return true;
      }
    }
    return false;
  }

  @Test
  void two_who_save_at_once_lose_nothing() {
    Visit other = new Visit(served);
    for (int round = 21; round < 29; round++) {
      int portions = round;
      CompletableFuture<Reply> leek =
          CompletableFuture.supplyAsync(() -> dish(visit, "Leek soup", "Leek soup", portions));
      CompletableFuture<Reply> bean =
          CompletableFuture.supplyAsync(() -> dish(other, "Bean soup", "Bean soup", portions));
      assertThat(leek.join().status()).isEqualTo(303);
      assertThat(bean.join().status()).isEqualTo(303);
      assertThat(dishes().at("/0/portions").asInt()).isEqualTo(portions);
      assertThat(dishes().at("/1/portions").asInt()).isEqualTo(portions);
    }
  }

  @Test
  void a_dish_that_is_begun_while_its_plan_is_given_up_is_told_so() {
    visit.open("/plans/supper");
    for (int round = 0; round < 6; round++) {
      int before = served.get("/api/v1/lots").json().path("items").size();
      CompletableFuture<Reply> begun =
          CompletableFuture.supplyAsync(
              () -> visit.submit("/plans/supper/batches", "dish", "Leek soup"));
      served.send(served.request("/api/v1/plans/supper").DELETE());
      int status = begun.join().status();
      int lots = served.get("/api/v1/lots").json().path("items").size();
      assertThat(status).isIn(303, 404);
      assertThat(lots - before).isEqualTo(status == 303 ? 1 : 0);
      keep();
    }
    served.send(served.request("/api/v1/plans/supper").DELETE());
    assertThat(served.kitchen().dishLots().link("supper", "Leek soup", List.of())).isFalse();
  }
}
