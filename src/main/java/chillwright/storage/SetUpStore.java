package chillwright.storage;

import static chillwright.storage.schema.Tables.ALLERGENS_SAID;
import static chillwright.storage.schema.Tables.FOOD;
import static chillwright.storage.schema.Tables.PERSON;
import static chillwright.storage.schema.Tables.PLACE;

import chillwright.core.kitchen.Allergen;
import chillwright.core.kitchen.AllergensSaid;
import chillwright.core.kitchen.KnownFood;
import chillwright.core.kitchen.KnownPlace;
import chillwright.core.kitchen.Person;
import chillwright.storage.schema.tables.records.AllergensSaidRecord;
import chillwright.storage.schema.tables.records.FoodRecord;
import chillwright.storage.schema.tables.records.PersonRecord;
import chillwright.storage.schema.tables.records.PlaceRecord;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.jooq.DSLContext;

/** Foods, places and people that a kitchen has named: few, and each as it was said last. */
public final class SetUpStore {
  private final DSLContext sql;

  SetUpStore(DSLContext sql) {
    this.sql = sql;
  }

  /** Those in use, by name. */
  public List<KnownFood> foods() {
    return sql.selectFrom(FOOD)
        .where(FOOD.RETIRED_AT.isNull())
        .orderBy(FOOD.NAME)
        .fetch(SetUpStore::food);
  }

  /** Retired or not, by name. */
  public List<KnownFood> everyFood() {
    return sql.selectFrom(FOOD).orderBy(FOOD.NAME).fetch(SetUpStore::food);
  }

  /** Retired or not: what was made of it is still explained by it. */
  public Optional<KnownFood> food(String name) {
    return sql.selectFrom(FOOD).where(FOOD.NAME.eq(name)).fetchOptional(SetUpStore::food);
  }

  public void save(KnownFood food, Instant now) {
    FoodRecord row = new FoodRecord();
    row.setName(food.name());
    row.setCategory(food.category());
    row.setPortions(Values.count(food.portions()));
    row.setContainer(food.container().orElse(null));
    row.setPlace(food.place().orElse(null));
    row.setReheating(food.reheating().orElse(null));
    row.setThawing(food.thawing().orElse(null));
    row.setRoomDays(Values.count(food.roomDays()));
    row.setAllergens(Values.joined(food.allergens().stream().map(Allergen::key).toList()));
    row.setOtherAllergens(food.otherAllergens().orElse(null));
    row.setIngredients(food.ingredients().orElse(null));
    row.setSaidAt(now);
    row.setRetiredAt(null);
    sql.insertInto(FOOD).set(row).onConflict(FOOD.NAME).doUpdate().set(row).execute();
    noteAllergens(row);
  }

  /** What is said again as it was is no change. */
  private void noteAllergens(FoodRecord food) {
    Optional<AllergensSaidRecord> last =
        sql.selectFrom(ALLERGENS_SAID)
            .where(ALLERGENS_SAID.FOOD.eq(food.getName()))
            .orderBy(ALLERGENS_SAID.SAID_AT.desc())
            .limit(1)
            .fetchOptional();
    boolean isSame =
        last.filter(said -> said.getAllergens().equals(food.getAllergens()))
            .filter(said -> Objects.equals(said.getOtherAllergens(), food.getOtherAllergens()))
            .isPresent();
    if (!isSame) {
      AllergensSaidRecord row = new AllergensSaidRecord();
      row.setFood(food.getName());
      row.setSaidAt(food.getSaidAt());
      row.setAllergens(food.getAllergens());
      row.setOtherAllergens(food.getOtherAllergens());
      row.setKnowsBefore(1);
      sql.insertInto(ALLERGENS_SAID)
          .set(row)
          .onConflict(ALLERGENS_SAID.FOOD, ALLERGENS_SAID.SAID_AT)
          .doUpdate()
          .set(row)
          .execute();
    }
  }

  /** All that was said of the allergens of foods, the earliest first, by the name of the food. */
  public Map<String, List<AllergensSaid>> allergensSaid() {
    return sql.selectFrom(ALLERGENS_SAID)
        .where(ALLERGENS_SAID.FOOD.ge(""))
        .orderBy(ALLERGENS_SAID.FOOD, ALLERGENS_SAID.SAID_AT)
        .fetchGroups(ALLERGENS_SAID.FOOD, SetUpStore::said);
  }

  /** The same of one food. */
  public List<AllergensSaid> allergensSaidOf(String food) {
    return sql.selectFrom(ALLERGENS_SAID)
        .where(ALLERGENS_SAID.FOOD.eq(food))
        .orderBy(ALLERGENS_SAID.SAID_AT)
        .fetch(SetUpStore::said);
  }

  private static AllergensSaid said(AllergensSaidRecord row) {
    return new AllergensSaid(
        row.getSaidAt(),
        allergens(row.getAllergens()),
        Optional.ofNullable(row.getOtherAllergens()),
        row.getKnowsBefore() == 1);
  }

  private static List<Allergen> allergens(String keys) {
    return Values.split(keys, key -> Allergen.ofKey(key).orElseThrow());
  }

  private static KnownFood food(FoodRecord row) {
    return new KnownFood(
        row.getName(),
        row.getCategory(),
        Values.count(row.getPortions()),
        Optional.ofNullable(row.getContainer()),
        Optional.ofNullable(row.getPlace()),
        Optional.ofNullable(row.getReheating()),
        Optional.ofNullable(row.getThawing()),
        Values.count(row.getRoomDays()),
        allergens(row.getAllergens()),
        Optional.ofNullable(row.getOtherAllergens()),
        Optional.ofNullable(row.getIngredients()));
  }

  /** Those in use, by name. */
  public List<KnownPlace> places() {
    return sql.selectFrom(PLACE)
        .where(PLACE.RETIRED_AT.isNull())
        .orderBy(PLACE.NAME)
        .fetch(SetUpStore::place);
  }

  public void save(KnownPlace place, Instant now) {
    PlaceRecord row = new PlaceRecord();
    row.setName(place.name());
    row.setKind(Codes.PLACE_KINDS.of(place.kind()));
    row.setOwnLimit(Values.hundredths(place.ownLimit()));
    row.setOwnLimitScale(Values.scale(place.ownLimit()));
    row.setRounds(place.rounds());
    row.setSaidAt(now);
    row.setRetiredAt(null);
    sql.insertInto(PLACE).set(row).onConflict(PLACE.NAME).doUpdate().set(row).execute();
  }

  private static KnownPlace place(PlaceRecord row) {
    return new KnownPlace(
        row.getName(),
        Codes.PLACE_KINDS.word(row.getKind()),
        Values.temperature(row.getOwnLimit(), row.getOwnLimitScale()),
        row.getRounds());
  }

  /** Those who work here now, by initials. */
  public List<Person> people() {
    return sql.selectFrom(PERSON)
        .where(PERSON.RETIRED_AT.isNull())
        .orderBy(PERSON.INITIALS)
        .fetch(SetUpStore::person);
  }

  public void save(Person person, Instant now) {
    PersonRecord row = new PersonRecord();
    row.setInitials(person.initials());
    row.setName(person.name().orElse(null));
    row.setSaidAt(now);
    row.setRetiredAt(null);
    sql.insertInto(PERSON).set(row).onConflict(PERSON.INITIALS).doUpdate().set(row).execute();
  }

  public Retiring foodsInUse() {
    return new Retiring(sql, FOOD, FOOD.NAME, FOOD.RETIRED_AT);
  }

  public Retiring placesInUse() {
    return new Retiring(sql, PLACE, PLACE.NAME, PLACE.RETIRED_AT);
  }

  public Retiring peopleInUse() {
    return new Retiring(sql, PERSON, PERSON.INITIALS, PERSON.RETIRED_AT);
  }

  private static Person person(PersonRecord row) {
    return new Person(row.getInitials(), Optional.ofNullable(row.getName()));
  }
}
