package chillwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import chillwright.service.ahead.Parameter;
import chillwright.service.ahead.Question;
import chillwright.web.Served.Reply;
import com.fasterxml.jackson.databind.JsonNode;
import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaLocation;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Questions ahead by request, as they are described. */
class AheadTest {
  private static Served served;
  private static JsonNode described;
  private static Schema schema;

  @BeforeAll
  static void open(@TempDir Path folder) {
    served = Served.in(folder);
    Reply reply = served.get("/api/v1/openapi.json");
    described = reply.json();
    schema =
        SchemaRegistry.withDefaultDialect(
                SpecificationVersion.DRAFT_2020_12,
                builder -> builder.schemas(Map.of("https://example.org/api", reply.text())))
            .getSchema(SchemaLocation.of("https://example.org/api#/components/schemas/Ahead"));
  }

  @AfterAll
  static void close() {
    served.close();
  }

  private static String address(Question question) {
    return "/api/v1/ahead/" + question.key();
  }

  @ParameterizedTest
  @EnumSource
  void an_example_is_answered_as_described(Question question) {
    Reply reply = served.get(address(question) + "?" + question.example().replace(' ', '&'));
    assertThat(reply.status()).as(reply.text()).isEqualTo(200);
    assertThat(schema.validate(reply.text(), InputFormat.JSON)).as(reply.text()).isEmpty();
    assertThat(reply.json().path("ruleSet").path("id").asText()).isEqualTo("us-food-code-2022");
  }

  @ParameterizedTest
  @EnumSource
  void its_parameters_are_those_of_the_question(Question question) {
    List<String> documented = new ArrayList<>();
    described
        .path("paths")
        .path(address(question))
        .path("get")
        .path("parameters")
        .forEach(
            parameter -> {
              if (parameter.has("name")) {
                String needed = parameter.path("required").asBoolean() ? " needed" : "";
                documented.add(parameter.path("name").asText() + needed);
              }
            });
    assertThat(documented)
        .isEqualTo(
            question.parameters().stream()
                .map(parameter -> parameter.name() + (parameter.isNeeded() ? " needed" : ""))
                .toList());
    assertThat(question.parameters()).extracting(Parameter::name).doesNotHaveDuplicates();
  }

  @Test
  void every_fault_is_told_at_once_by_its_parameter() {
    Reply reply = served.get("/api/v1/ahead/cooling?food=chilix&surroundings=cold&depth=2");
    assertThat(reply.status()).isEqualTo(422);
    assertThat(reply.json().at("/problems").findValuesAsText("parameter"))
        .containsExactly("food", "surroundings", "depth");
  }

  @Test
  void another_rule_set_may_be_named() {
    String address = "/api/v1/ahead/cooling?surroundings=38F&ruleSet=";
    assertThat(served.get(address + "us-home").json().findValuesAsText("key"))
        .startsWith("cooling.set-out")
        .contains("cooling.advice");
    assertThat(served.get(address + "nowhere").status()).isEqualTo(422);
  }

  @Test
  void where_a_formula_does_not_reach_there_is_a_reason() {
    JsonNode told = served.get("/api/v1/ahead/freezing?thickness=13cm").json().at("/told/0");
    assertThat(told.path("reason").asText()).isEqualTo("too-thick");
    assertThat(told.at("/values/expected").isMissingNode()).isTrue();
  }
}
