//go:build !race

package kitchen

const slowness = 1
