// Package duration says how long something is likely to take, from the range that is
// usual for it and from how long it took before.
//
// The logarithm of a duration is taken as normal, so that twice as long is as far
// off as half as long. Its middle differs from kitchen to kitchen, and about that
// middle the runs of one kitchen differ from each other. The usual range is the middle
// [Sure] of both together. What a kitchen has seen moves its middle by the update of a
// normal mean with a normal prior (P. M. Lee, Bayesian Statistics: An Introduction,
// section 2.2), and its runs tell, once there are several, how far they lie apart.
//
// Things of one run share what made it slow or quick and are no evidence apart: a run
// counts once, with the mean of what it shows.
package duration
