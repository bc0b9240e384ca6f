package chillwright.rulebook;

import com.fasterxml.jackson.databind.JsonNode;

/**
 * What one YAML file says.
 *
 * @param file its name as a reader can find it
 * @param stem its own name without folder and ending; the topic of a topic file
 * @param isProven whether the build has held it against its schema
 */
record Document(String file, String stem, JsonNode root, boolean isProven) {}
