/**
 * When food that is cooling will reach its limits, as far as its readings tell. Information to act
 * on while there is time: no verdict ever rests on it.
 */
package chillwright.core.forecast;
