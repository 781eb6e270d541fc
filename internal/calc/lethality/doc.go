// Package lethality compares times at different temperatures by how fast they
// kill heat-resistant spores.
//
// The rate is ten times higher for each z = 10 K, and one at the reference of
// 121.1 °C; a time weighted by it is called F0 (the definition of ISO 17665 and
// of the pharmacopoeias). The reference is also written 250 °F = 121.11 °C,
// which changes F0 by a quarter of a per cent.
//
// It counts the steam around the containers and knows nothing of their core,
// which lags far behind in a big bag. It is never a pass mark, and more than two
// figures of it are more precise than its inputs.
package lethality
