package kitchen

import "strconv"

// RunNo is the number of a run within its collective, from 1.
type RunNo int

// String prints it as people write it: #12.
func (n RunNo) String() string { return "#" + strconv.Itoa(int(n)) }

// UnitNo is the number of a unit within its run, from 1.
type UnitNo int

// Ref names a run, or units of it: #12, #12.3. No Units means the whole run.
type Ref struct {
	Run   RunNo
	Units []UnitNo
}

// String prints the reference in the form that parses back: #12, #12.3,
// #12.1-4, #12.1,3,5-6.
func (r Ref) String() string {
	s := r.Run.String()
	for i := 0; i < len(r.Units); {
		j := i
		for j+1 < len(r.Units) && r.Units[j+1] == r.Units[j]+1 {
			j++
		}
		sep := ","
		if i == 0 {
			sep = "."
		}
		s += sep + strconv.Itoa(int(r.Units[i]))
		switch {
		case j == i+1:
			s += "," + strconv.Itoa(int(r.Units[j]))
		case j > i+1:
			s += "-" + strconv.Itoa(int(r.Units[j]))
		}
		i = j + 1
	}
	return s
}

// MemberNo is the number under which a member stands in the book, from 1. A
// member who was forgotten keeps the number and loses the name.
type MemberNo int

// EntryNo is the place of an entry in its collective's log, from 1.
type EntryNo int
