/**
 * What a kitchen says of itself ahead of any log: the foods it makes again and again, its places,
 * its people, and how a day was handed over and closed.
 */
package chillwright.core.kitchen;
