package chillwright.cases;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** A mapping of a case file, which tells where it stands when something in it is wrong. */
public final class Node {
  private final String where;
  private final Map<?, ?> values;

  private Node(String where, Map<?, ?> values) {
    this.where = where;
    this.values = values;
  }

  static Node of(String where, Object yaml) {
    if (yaml instanceof Map<?, ?> map) {
      return new Node(where, map);
    }
    throw new IllegalArgumentException(where + ": a mapping is needed, not " + yaml);
  }

  /** Refuses any other key: a misspelt expectation would never fail. */
  Node allow(String... keys) {
    Set<String> known = Set.of(keys);
    for (Object key : values.keySet()) {
      if (!known.contains(key)) {
        throw new IllegalArgumentException(where + ": unknown key " + key);
      }
    }
    return this;
  }

  /** Whether the key is there, be it with null. */
  boolean has(String key) {
    return values.containsKey(key);
  }

  String text(String key) {
    return optionalText(key)
        .orElseThrow(() -> new IllegalArgumentException(where + ": missing " + key));
  }

  /** The value as text; empty where it is missing or null. */
  Optional<String> optionalText(String key) {
    return Optional.ofNullable(values.get(key)).map(Object::toString);
  }

  List<Node> list(String key) {
    List<Node> nodes = new ArrayList<>();
    for (Object item : items(key)) {
      nodes.add(of(where + "/" + key + "/" + nodes.size(), item));
    }
    return nodes;
  }

  List<String> texts(String key) {
    return items(key).stream().map(Object::toString).toList();
  }

  /** The mapping under that key. */
  Node node(String key) {
    return of(where + "/" + key, values.get(key));
  }

  private List<?> items(String key) {
    if (!has(key)) {
      return List.of();
    }
    if (values.get(key) instanceof List<?> list) {
      return list;
    }
    throw new IllegalArgumentException(where + ": " + key + " must be a list");
  }

  @Override
  public String toString() {
    return where;
  }
}
