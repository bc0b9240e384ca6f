/**
 * Rule and keeping files: cited figures as YAML data, in this jar and in a kitchen's own folder.
 * Start with {@link chillwright.rulebook.RuleLibrary}, which reads everything once; a {@link
 * chillwright.rulebook.RuleBook} gives the rules in force on a day.
 *
 * <p>Reading goes {@code Shelf} (where files come from) to {@code YamlText} (a tree; those of this
 * jar the build has {@code Prepared}) to {@code RuleSetReader} (a local set takes over from its
 * base what it leaves out) to {@code SchemaCheck} (keys and values; for the files of this jar the
 * build does it) to {@code RuleReader} and {@code FigureCheck} (parts that must fit each other).
 * Every step goes on after a fault, so all faults of all files are told at once.
 *
 * <p>What other authorities need, and where it would go; nothing in the format stands in its way:
 *
 * <ul>
 *   <li>a strict limit ("above 63 °C"): a figure's {@code passes: beyond}, there already; a strict
 *       time ("less than 4 h"): the same key beside {@code within}
 *   <li>limits printed in one scale only, and a printed limit for frozen food: there already
 *   <li>a stage counted from where the last one ended ("a further 4 hours"): {@code reach} with
 *       {@code from} that figure, there already; from the end of cooking or from the cooking
 *       temperature: a key {@code starts} beside {@code from}
 *   <li>a band with a lower end (0 to 3 °C): a shape of its own, since {@code at-most} with {@code
 *       at-least} means either
 *   <li>alternatives and time-temperature rows (70 °C for 2 min or 75 °C for 30 s): a shape that
 *       holds a list of figures
 *   <li>display in bands (under 2 h, under 4 h, over) and one occasion only: a shape with an
 *       ordered list of times and what to do; air or product, by store, transport or retail:
 *       occasions
 *   <li>days after the making day or with it: {@code first-day}, there already; reset after
 *       thawing: settings
 *   <li>an authority without a number: {@code no-figure} with its reason, there already; a
 *       validated alternative of the kitchen: a local set with its own citation
 *   <li>layers (a union, a country, a region): {@code extends} over several sets; a repeal: {@code
 *       null} from a day
 *   <li>scope (home, caterer, quick-frozen label), records and retention: new keys of {@code
 *       ruleset.yaml}, each with its citation
 * </ul>
 */
package chillwright.rulebook;
