package chat

import "strings"

// tableWidth is how wide a table may be, for platforms set it in a block of
// fixed pitch that is narrower than running text.
const tableWidth = 28

// tableLines pads cells by their display width. The gap between columns is
// two spaces, or one if the table is too wide otherwise; if that does not
// help the widest columns are narrowed and their cells wrap, so that nothing
// is lost. A row without text makes no line.
func tableLines(t Table, width int) []line {
	columns := 0
	cells := make([][]line, len(t.Rows))
	for i, row := range t.Rows {
		columns = max(columns, len(row))
		for _, cell := range row {
			cells[i] = append(cells[i], atoms(run{text: strings.TrimSpace(Clean(cell))}))
		}
	}
	if columns == 0 {
		return nil
	}
	if 2*columns-1 > width {
		return crowded(cells, width)
	}
	widths := naturalWidths(cells, columns)
	gap := 2
	if sum(widths)+gap*(columns-1) > width {
		gap = 1
		narrow(widths, width-gap*(columns-1))
	}
	var lines []line
	for _, row := range cells {
		lines = append(lines, rowLines(row, widths, t.Align, gap)...)
	}
	return lines
}

// crowded prints a table of more columns than there is room for as running
// text, a row to a line.
func crowded(rows [][]line, width int) []line {
	var lines []line
	for _, row := range rows {
		var text line
		for _, cell := range row {
			text = append(append(text, cell...), blanks(2)...)
		}
		lines = append(lines, wrap(text, width)...)
	}
	return lines
}

func naturalWidths(rows [][]line, columns int) []int {
	widths := make([]int, columns)
	for _, row := range rows {
		for i, cell := range row {
			widths[i] = max(widths[i], cell.width())
		}
	}
	return widths
}

// narrow takes from the widest column until all fit into room.
func narrow(widths []int, room int) {
	for sum(widths) > room {
		widest := 0
		for i, w := range widths {
			if w > widths[widest] {
				widest = i
			}
		}
		if widths[widest] <= 1 {
			return
		}
		widths[widest]--
	}
}

func rowLines(row []line, widths []int, align []Align, gap int) []line {
	wrapped := make([][]line, len(row))
	height := 0
	for i, cell := range row {
		wrapped[i] = wrap(cell, max(widths[i], 1))
		height = max(height, len(wrapped[i]))
	}
	lines := make([]line, height)
	for y := range lines {
		for i, cell := range wrapped {
			var text line
			if y < len(cell) {
				text = cell[y]
			}
			lines[y] = append(lines[y], padded(text, widths[i], side(align, i))...)
			lines[y] = append(lines[y], blanks(gap)...)
		}
		lines[y] = trimmed(lines[y])
	}
	return lines
}

func padded(text line, width int, to Align) line {
	pad := blanks(width - text.width())
	if to == Right {
		return append(pad, text...)
	}
	return append(append(line(nil), text...), pad...)
}

func side(align []Align, column int) Align {
	if column < len(align) {
		return align[column]
	}
	return Left
}

func blanks(n int) line {
	var l line
	for range n {
		l = append(l, atom{text: " ", width: 1})
	}
	return l
}

func trimmed(l line) line {
	for len(l) > 0 && l[len(l)-1].isSpace() {
		l = l[:len(l)-1]
	}
	return l
}

func sum(ns []int) int {
	total := 0
	for _, n := range ns {
		total += n
	}
	return total
}
