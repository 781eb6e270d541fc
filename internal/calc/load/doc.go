// Package load plans what one pressure cooker can do in a day: how much water
// goes in under the rack, how many loads a number of containers makes, and when
// each load passes its stages.
//
// Times and volumes that stand here as defaults are common practice in small
// kitchens with a 20 to 40 litre pot, not properties of any cooker. A
// collective's own figures, and the maker's, come before them.
package load
