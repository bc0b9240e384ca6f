/**
 * What heat does to food, worked out ahead: how long it cools, freezes and thaws, what ice it needs
 * and what frozen storage costs. Start with {@link chillwright.core.heat.Cooling}; {@link
 * chillwright.core.heat.Answer} says why there is sometimes a reason instead of a figure.
 *
 * <p>Nothing here is a verdict. A time from first principles is good to about a third; a reading is
 * always better. Temperatures are degrees Celsius here, as the formulas are written in them.
 */
package chillwright.core.heat;
