package chillwright.rulebook;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.math.BigInteger;
import java.util.Map;

/** A tree of {@link YamlText} in bytes and back, node for node. */
final class TreeBytes {
  private static final JsonNodeFactory MAKE = JsonNodeFactory.instance;

  private static final char MAPPING = 'm';
  private static final char LIST = 'l';
  private static final char TEXT = 't';
  private static final char WHOLE_NUMBER = 'w';
  private static final char FRACTION = 'f';
  private static final char YES_OR_NO = 'y';
  private static final char NOTHING = 'n';

  private TreeBytes() {}

  static void write(JsonNode node, DataOutputStream out) throws IOException {
    if (node.isObject()) {
      out.writeByte(MAPPING);
      out.writeInt(node.size());
      for (Map.Entry<String, JsonNode> field : node.properties()) {
        out.writeUTF(field.getKey());
        write(field.getValue(), out);
      }
    } else if (node.isArray()) {
      out.writeByte(LIST);
      out.writeInt(node.size());
      for (JsonNode item : node) {
        write(item, out);
      }
    } else {
      writeScalar(node, out);
    }
  }

  private static void writeScalar(JsonNode node, DataOutputStream out) throws IOException {
    if (node.isTextual()) {
      out.writeByte(TEXT);
      out.writeUTF(node.textValue());
    } else if (node.isIntegralNumber()) {
      out.writeByte(WHOLE_NUMBER);
      out.writeUTF(node.bigIntegerValue().toString());
    } else if (node.isDouble()) {
      out.writeByte(FRACTION);
      out.writeDouble(node.doubleValue());
    } else if (node.isBoolean()) {
      out.writeByte(YES_OR_NO);
      out.writeBoolean(node.booleanValue());
    } else if (node.isNull()) {
      out.writeByte(NOTHING);
    } else {
      throw new IllegalArgumentException("no node of a rule file: " + node.getNodeType());
    }
  }

  static JsonNode read(DataInputStream in) throws IOException {
    int kind = in.readByte();
    return switch (kind) {
      case MAPPING -> readMapping(in);
      case LIST -> readList(in);
      case TEXT -> MAKE.textNode(in.readUTF());
      case WHOLE_NUMBER -> MAKE.numberNode(new BigInteger(in.readUTF()));
      case FRACTION -> MAKE.numberNode(in.readDouble());
      case YES_OR_NO -> MAKE.booleanNode(in.readBoolean());
      case NOTHING -> MAKE.nullNode();
      default -> throw new IllegalStateException("no such kind of node: " + kind);
    };
  }

  private static JsonNode readMapping(DataInputStream in) throws IOException {
    ObjectNode mapping = MAKE.objectNode();
    int size = in.readInt();
    for (int i = 0; i < size; i++) {
      mapping.set(in.readUTF(), read(in));
    }
    return mapping;
  }

  private static JsonNode readList(DataInputStream in) throws IOException {
    ArrayNode list = MAKE.arrayNode();
    int size = in.readInt();
    for (int i = 0; i < size; i++) {
      list.add(read(in));
    }
    return list;
  }
}
