// Package picture draws what a chat shows better than it tells: charts, as PNG.
//
// It has no sentences and knows no clock. Every string comes with the data, also
// the names of hours and days; the package finds a place for each, and cuts what
// is too long rather than let it run out of the picture. What it draws depends
// on its arguments alone, so the same chart is the same bytes.
//
// Charts are made for a phone that shows them about 360 points wide: 1200 × 900
// pixels (a tree is as tall as its rows), letters of 42 pixels (about 12.6 points there), few ticks, labels on the
// things they name and not in a legend. The background is opaque, since chats may
// be dark. Colours keep 4.5:1 to white for text and 3:1 for lines (WCAG 2.1, success
// criteria 1.4.3 and 1.4.11); none carries a meaning alone: the limit is dashed,
// a reading that can't be is hollow, the band is paler than its middle.
//
// Shapes are rasterised by golang.org/x/image/vector; the letters are the Go fonts
// (Latin, Greek, Cyrillic), which that module embeds. A letter that they lack is
// drawn as an empty box; any other sign they lack, such as an emoji, is left out.
package picture
