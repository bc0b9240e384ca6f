package chillwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import chillwright.web.Served.Reply;
import chillwright.web.answers.Json;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaLocation;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import io.swagger.v3.oas.models.SpecVersion;
import io.swagger.v3.parser.OpenAPIV3Parser;
import io.swagger.v3.parser.core.models.ParseOptions;
import io.swagger.v3.parser.core.models.SwaggerParseResult;
import java.io.IOException;
import java.io.InputStream;
import java.net.http.HttpRequest.BodyPublishers;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.logging.Level;
import java.util.logging.Logger;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The description of the API against the OpenAPI Specification 3.1 and against what runs. */
class OpenApiTest {
  private static final Set<String> METHODS = Set.of("get", "post", "put", "patch", "delete");

  /** It warns of each keyword of OpenAPI around the schemas. */
  private static final Logger CHATTY = Logger.getLogger("com.networknt");

  private static Served served;
  private static JsonNode described;
  private static SchemaRegistry schemas;

  @BeforeAll
  static void open(@TempDir Path folder) {
    CHATTY.setLevel(Level.SEVERE);
    served = Served.in(folder);
    Reply reply = served.get("/api/v1/openapi.json");
    described = reply.json();
    schemas =
        SchemaRegistry.withDefaultDialect(
            SpecificationVersion.DRAFT_2020_12,
            builder -> builder.schemas(Map.of("https://example.org/api", reply.text())));
    life();
  }

  @AfterAll
  static void close() {
    served.close();
  }

  /** Something of everything: running, out, overdue, corrected, divided, frozen, closed. */
  private static void life() {
    served.cookSoup("O-1");
    served.cookSoup("O-2");
    served.at("2026-03-03T19:30:00Z");
    served.post(
        "/api/v1/lots/O-1/entries",
        """
        {'entries':[
          {'id':'r1','when':'2026-03-03T10:10:00-07:00','entry':'reading','temperature':'130F',
           'air':'38F','probe':'P1'},
          {'when':'2026-03-03T12:15:00-07:00','entry':'reading','temperature':'90F'},
          {'when':'2026-03-03T12:16:00-07:00','entry':'correction','corrects':'r1',
           'temperature':'131F'}]}
        """);
    served.post("/api/v1/lots", "{'lot':'O-3','from':'O-1'}");
    served.post(
        "/api/v1/lots/O-3/entries",
        "{'when':'2026-03-03T12:17:00-07:00','entry':'frozen','portions':4,'until':'2026-06-01'}");
    served.post(
        "/api/v1/lots", "{'lot':'O-4','food':'Rice','category':'soup_or_stew','portions':9}");
    served.post(
        "/api/v1/lots/O-1/entries", "{'when':'2026-03-03T12:20:00-07:00','entry':'discarded'}");
    served.post(
        "/api/v1/readings",
        "{'when':'2026-03-03T10:00:00-07:00','place':'Walk-in','temperature':'39F'}");
  }

  private static Reply put(String address, JsonNode body) {
    return served.send(
        served
            .request(address, "Content-Type", "application/json")
            .PUT(BodyPublishers.ofByteArray(bytes(body))));
  }

  /** What the kitchen says of itself, and its days: examples, answers and faults. */
  @Test
  void foods_places_people_and_days_are_as_described() {
    said("/foods/{name}", "/api/v1/foods/Barley%20soup", "FoodCard", "Food");
    said("/places/{name}", "/api/v1/places/Walk-in", "PlaceCard", "Place");
    said("/people/{initials}", "/api/v1/people/RO", "PersonCard", "Person");
    said("/probes/{name}", "/api/v1/probes/P-2", "ProbeCard", "Probe");
    said("/label-statement", "/api/v1/label-statement", "NewLabelStatement", "LabelStatement");
    answers("/api/v1/label-statement", "LabelStatement");
    JsonNode check = example("/probes/{name}/checks", "post");
    assertThat(faults("NewProbeCheck", check)).isEmpty();
    fits("check", served.postBytes("/api/v1/probes/P-2/checks", bytes(check)), "ProbeCheck");
    answers("/api/v1/probes", "ProbeList");
    answers("/api/v1/probes/P-2/checks", "ProbeCheckList");
    put("/api/v1/places/Chest", Served.json("{'kind':'freezer'}"));
    put("/api/v1/places/Pass", Served.json("{'kind':'counter'}"));
    put("/api/v1/foods/Rice", Served.json("{'category':'soup_or_stew'}"));
    fits("name", put("/api/v1/kitchen", Served.json("{'name':null}")), "Kitchen");
    JsonNode address = Served.json("{'address':'http://kitchen-pc:8080'}");
    fits("address", put("/api/v1/kitchen/address", address), "Kitchen");
    answers("/api/v1/foods", "FoodList");
    answers("/api/v1/places", "PlaceList");
    answers("/api/v1/people", "PersonList");
    String day = "/api/v1/days/2026-03-03";
    served.post(
        "/api/v1/readings",
        "{'when':'2026-03-03T10:05:00-07:00','place':'Walk-in','temperature':'50F'}");
    Reply over = served.post(day + "/handovers", "{'lots':['O-2'],'by':'RO'}");
    fits("handover", over, "Day");
    assertThat(over.status()).as(over.text()).isEqualTo(201);
    fits("closed", served.post(day + "/signatures", "{'word':'closed','by':'MK'}"), "Day");
    fits("refused", served.post(day + "/handovers", "{'lots':['O-2'],'by':'RO'}"), "Problem");
    fits(
        "reopened",
        served.post(day + "/signatures", "{'word':'reopened','by':'MK','note':'more'}"),
        "Day");
    answers(day, "Day");
    answers("/api/v1/days/2026-03-01", "Day");
    answers("/api/v1/days/noon", "Problem");
    fits("refused", put("/api/v1/foods/Rice", Served.json("{'category':'none'}")), "Problem");
    assertThat(faults("NewHandover", example("/days/{date}/handovers", "post"))).isEmpty();
    assertThat(faults("NewSignature", example("/days/{date}/signatures", "post"))).isEmpty();
  }

  private static void said(String path, String address, String card, String answer) {
    JsonNode example = example(path, "put");
    assertThat(faults(card, example)).isEmpty();
    Reply reply = put(address, example);
    assertThat(reply.status()).as(reply.text()).isEqualTo(200);
    fits(address, reply, answer);
  }

  private static JsonNode example(String path, String method) {
    return described
        .at("/paths")
        .at("/" + ("/api/v1" + path).replace("/", "~1"))
        .at("/" + method + "/requestBody/content/application~1json/example");
  }

  @Test
  void a_parser_finds_no_fault_in_it() throws IOException {
    ParseOptions options = new ParseOptions();
    options.setResolve(true);
    try (InputStream in = OpenApiTest.class.getResourceAsStream("/openapi.yaml")) {
      String text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
      SwaggerParseResult read = new OpenAPIV3Parser().readContents(text, null, options);
      assertThat(read.getMessages()).isEmpty();
      assertThat(read.getOpenAPI().getSpecVersion()).isEqualTo(SpecVersion.V31);
    }
  }

  @Test
  void its_paths_are_the_routes_that_run() {
    Set<String> documented = new TreeSet<>();
    described
        .at("/paths")
        .properties()
        .forEach(
            path ->
                path.getValue()
                    .fieldNames()
                    .forEachRemaining(
                        method -> {
                          if (METHODS.contains(method)) {
                            documented.add(method.toUpperCase(Locale.ROOT) + " " + path.getKey());
                          }
                        }));
    Set<String> running = new TreeSet<>(served.server().routes());
    Set<String> heads = new TreeSet<>();
    running.stream()
        .filter(route -> route.startsWith("GET "))
        .forEach(route -> heads.add(route.replaceFirst("GET", "HEAD")));
    assertThat(running).containsAll(heads);
    running.removeAll(heads);
    // Pages are for people; what programs may rely on stands below this address.
    running.removeIf(route -> !route.contains(" /api/"));
    assertThat(running).isEqualTo(documented);
  }

  @Test
  void every_schema_it_points_at_is_there_and_none_is_idle() {
    String text = described.toString();
    described
        .at("/components/schemas")
        .fieldNames()
        .forEachRemaining(
            name -> assertThat(text).contains("\"#/components/schemas/" + name + "\""));
  }

  @Test
  void real_answers_are_as_described() {
    answers("/api/v1/kitchen", "Kitchen");
    answers("/api/v1/health", "Health");
    answers("/api/v1/lots", "LotList");
    for (String lot : List.of("O-1", "O-2", "O-3", "O-4")) {
      answers("/api/v1/lots/" + lot, "LotDetail");
      answers("/api/v1/lots/" + lot + "/entries", "EntryList");
    }
    answers("/api/v1/readings", "EntryList");
    answers("/api/v1/due", "DueList");
    answers("/api/v1/reports/out-of-compliance", "TroubleList");
    answers("/api/v1/cooling-methods", "CoolingMethods");
    answers("/api/v1/cooling-methods?from=noon", "Problem");
    answers("/api/v1/keeping", "CategoryList");
    answers("/api/v1/rule-sets", "RuleSetList");
    answers("/api/v1/rule-sets/us-food-code-2022", "RuleSetDetail");
    answers("/api/v1/rule-sets/us-home", "RuleSetDetail");
    answers("/api/v1/nothing", "Problem");
    answers("/api/v1/lots?limit=0", "Problem");
  }

  private static void answers(String address, String schema) {
    fits(address, served.get(address), schema);
  }

  private static void fits(String what, Reply reply, String schema) {
    assertThat(faults(schema, reply.json())).as(what + ": " + reply.text()).isEmpty();
  }

  private static List<String> faults(String schema, JsonNode value) {
    Schema found =
        schemas.getSchema(
            SchemaLocation.of("https://example.org/api#/components/schemas/" + schema));
    List<String> faults = new ArrayList<>();
    found
        .validate(
            value.toString(),
            InputFormat.JSON,
            context -> context.executionConfig(config -> config.formatAssertionsEnabled(true)))
        .forEach(fault -> faults.add(fault.toString()));
    return faults;
  }

  @Test
  void real_answers_to_writes_and_questions_are_as_described() {
    fits(
        "lot",
        served.post("/api/v1/lots", "{'food':'Rice','category':'soup_or_stew'}"),
        "LotDetail");
    String cooked = "{'when':'2026-03-03T12:00:00-07:00','entry':'cooked','temperature':'200F'}";
    fits("entries", served.post("/api/v1/lots/O-4/entries", cooked), "EntriesWritten");
    fits(
        "readings",
        served.post(
            "/api/v1/readings",
            "{'when':'2026-03-03T11:00:00-07:00','place':'Walk-in','temperature':'3.5C'}"),
        "ReadingsWritten");
    fits(
        "keep",
        served.post("/api/v1/keeping", "{'category':'soup_or_stew','ruleSet':'us-home'}"),
        "Keep");
    fits("check", served.post("/api/v1/checks", "{'rows':[{'lot':'A'}]}"), "Check");
    String rows = "lot,food,category,when,entry\nO-9,Rice,nothing,noon,cooked\n";
    fits("import", served.postCsv("/api/v1/imports?goodLotsOnly=true", rows), "Imported");
    fits("plan", putPlan(10), "Plan");
    fits("no plan", putPlan(130), "Plan");
    fits("plans", served.get("/api/v1/plans"), "PlanList");
    fits("trace", served.get("/api/v1/trace?food=Rice"), "Trace");
    fits("recall", served.get("/api/v1/trace?allergen=wheat"), "Trace");
    fits("pull", served.get("/api/v1/pull?days=7"), "Pull");
    fits("problem", served.postCsv("/api/v1/imports", rows), "Problem");
    fits("problem", served.post("/api/v1/lots", "{'food':}"), "Problem");
    fits("problem", served.post("/api/v1/lots", "{'food':1}"), "Problem");
  }

  private Reply putPlan(int reheat) {
    String body =
        "{'serving':'2026-03-20T18:00:00Z','dishes':[{'dish':'Soup','category':'soup_or_stew',"
            + "'ingredients':[{'name':'leeks','amount':2,'unit':'kg'},{'name':'salt'}],"
            + "'route':'chilled','make':[{'step':'simmer','minutes':60}],"
            + "'finish':[{'step':'reheat','minutes':"
            + reheat
            + "}]}]}";
    return served.send(
        served
            .request("/api/v1/plans/O-12", "Content-Type", "application/json")
            .PUT(BodyPublishers.ofString(body.replace('\'', '"'))));
  }

  @Test
  void its_examples_are_as_it_describes_and_work() {
    ObjectNode post =
        (ObjectNode) described.at("/paths/~1api~1v1~1checks/post/requestBody/content");
    JsonNode example = post.at("/application~1json/example");
    assertThat(faults("CheckQuestion", example)).isEmpty();
    Reply check = served.postBytes("/api/v1/checks", bytes(example));
    fits("check", check, "Check");
    assertThat(check.json().at("/problems")).isEmpty();
    JsonNode keep =
        described.at(
            "/paths/~1api~1v1~1keeping/post/requestBody/content/application~1json/example");
    assertThat(faults("KeepQuestion", keep)).isEmpty();
    fits("keep", served.postBytes("/api/v1/keeping", bytes(keep)), "Keep");
    JsonNode lot =
        described.at("/paths/~1api~1v1~1lots/post/requestBody/content/application~1json/example");
    assertThat(faults("NewLot", lot)).isEmpty();
    assertThat(served.postBytes("/api/v1/lots", bytes(lot)).status()).isEqualTo(201);
    String entries = "/paths/~1api~1v1~1lots~1{lot}~1entries/post/requestBody/content";
    JsonNode several = described.at(entries + "/application~1json/examples/several/value");
    assertThat(faults("NewEntries", several)).isEmpty();
    assertThat(served.postBytes("/api/v1/lots/BS-0303/entries", bytes(several)).status())
        .isEqualTo(201);
    JsonNode one = described.at(entries + "/application~1json/examples/one/value");
    assertThat(faults("NewEntries", one)).isEmpty();
    assertThat(served.postBytes("/api/v1/lots/BS-0303/entries", bytes(one)).status())
        .isEqualTo(201);
    JsonNode correction = described.at(entries + "/application~1json/examples/correction/value");
    assertThat(faults("NewEntries", correction)).isEmpty();
    Reply corrected = served.postBytes("/api/v1/lots/BS-0303/entries", bytes(correction));
    assertThat(corrected.status()).as(corrected.text()).isEqualTo(201);
    JsonNode file = described.at("/paths/~1api~1v1~1imports/post/requestBody/content/text~1csv");
    Reply imported = served.postCsv("/api/v1/imports", file.at("/example").asText());
    fits("import", imported, "Imported");
    assertThat(imported.json().at("/entries").asInt()).isEqualTo(2);
    JsonNode problem =
        described.at("/components/responses/Problem/content/application~1problem+json/example");
    assertThat(faults("Problem", problem)).isEmpty();
  }

  private static byte[] bytes(JsonNode json) {
    return json.toString().getBytes(StandardCharsets.UTF_8);
  }

  @Test
  void a_wrong_answer_would_be_seen() throws IOException {
    ObjectNode kitchen = (ObjectNode) served.get("/api/v1/kitchen").json();
    kitchen.put("extra", 1).remove("zone");
    assertThat(faults("Kitchen", kitchen)).hasSize(2);
    ObjectNode lot = (ObjectNode) Json.MAPPER.readTree(served.get("/api/v1/lots/O-1").text());
    lot.put("extra", 1).put("lot", "a b").put("beganAt", "noon");
    assertThat(String.join("\n", faults("LotDetail", lot)))
        .contains("'extra' is not evaluated", "/lot: does not match", "/beganAt: does not match");
  }
}
