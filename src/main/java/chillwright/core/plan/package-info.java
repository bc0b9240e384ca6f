/**
 * Make-ahead plans: what is made when, backwards from a serving time, so that no limit of the rule
 * set and nothing the kitchen has is overrun. Start at {@link chillwright.core.plan.Planner}.
 */
package chillwright.core.plan;
