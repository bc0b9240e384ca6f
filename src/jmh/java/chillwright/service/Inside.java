package chillwright.service;

import chillwright.storage.Database;

/** Reaches the database of an open kitchen, for the bench alone. */
public final class Inside {
  private Inside() {}

  public static Database databaseOf(Kitchen kitchen) {
    return kitchen.database();
  }
}
