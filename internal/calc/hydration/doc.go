// Package hydration answers how much dry grain and how much water make a
// container of wetted grain, and the other way round.
//
// Two methods must not be mixed up. Measured: the water is weighed in, a ratio r
// of it per dry grain, and everything weighed in stays in; for bags and jars
// filled dry. Soaked: the grain stands in plenty of water, is simmered and
// drained, and comes out at k times its dry weight; nobody measures the water.
//
// Ratio and moisture are two scales of one thing. Ratio is water added per dry
// grain as bought, moisture is all water, the grain's own included, as a share
// of the whole (wet basis). Both directions follow from the dry matter being
// kept: D. Hicks and H. Cloud, "Calculating grain weight shrinkage in corn due
// to mechanical drying", National Corn Handbook NCH-61, solved for the water.
//
// The package plans for no particular kitchen: default ratios, moistures and
// densities are its caller's.
package hydration
