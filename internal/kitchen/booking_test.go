package kitchen

import (
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
)

func booked(no EntryNo, who MemberNo, cooker, from, to string) Booking {
	return Booking{No: no, Cooker: cooker, From: clock(from), To: clock(to), For: who, Room: 7}
}

func TestBookings(t *testing.T) {
	made := func(b Booking) Record {
		return Record{No: b.No, Entry: BookingMade{Cooker: b.Cooker, From: b.From, To: b.To, Soak: b.Soak, For: b.For, Room: b.Room}}
	}
	soaked := booked(4, jo, "big pot", "2 10:00", "2 14:00")
	soaked.Soak = clock("21:00")
	tests := []struct {
		name    string
		records []Record
		want    []Booking
	}{
		{
			"the earliest first",
			[]Record{made(booked(1, ana, "big pot", "15:00", "17:00")), made(booked(2, jo, "big pot", "10:00", "14:00"))},
			[]Booking{booked(2, jo, "big pot", "10:00", "14:00"), booked(1, ana, "big pot", "15:00", "17:00")},
		},
		{"released", []Record{made(booked(1, ana, "big pot", "10:00", "14:00")), {No: 2, Entry: BookingReleased{1}}}, nil},
		{
			"moved, whatever the order of the records",
			[]Record{{No: 2, Entry: BookingMoved{1, clock("12:00"), clock("13:00")}}, made(booked(1, ana, "big pot", "10:00", "14:00"))},
			[]Booking{booked(1, ana, "big pot", "12:00", "13:00")},
		},
	}
	for _, tt := range tests {
		if diff := cmp.Diff(tt.want, FoldBookings(tt.records), cmpopts.EquateEmpty()); diff != "" {
			t.Errorf("%s (-want +got):\n%s", tt.name, diff)
		}
	}
	moved := FoldBookings([]Record{made(soaked), {No: 5, Entry: BookingMoved{4, clock("2 12:00"), clock("2 16:00")}}})[0]
	want := []Ping{{Key: "booking/4/soak", Due: clock("23:00"), Kind: SoakForBooking, Loudness: DuePing, To: jo, Room: 7, About: "booking/4"}}
	if diff := cmp.Diff(want, moved.Wants()); diff != "" {
		t.Errorf("the soak of a moved booking (-want +got):\n%s", diff)
	}
}

func TestCheckBooking(t *testing.T) {
	stand := []Booking{booked(1, ana, "big pot", "10:00", "14:00")}
	tests := []struct {
		name string
		b    Booking
		want error
	}{
		{"another cooker", booked(0, jo, "small pot", "10:00", "14:00"), nil},
		{"after it", booked(0, jo, "big pot", "14:00", "16:00"), nil},
		{"before it", booked(0, jo, "big pot", "08:00", "10:00"), nil},
		{"into it", booked(0, jo, "Big Pot", "08:00", "10:01"), Booked{stand[0]}},
		{"within it", booked(0, jo, "big pot", "11:00", "12:00"), Booked{stand[0]}},
		{"around it", booked(0, jo, "big pot", "08:00", "18:00"), Booked{stand[0]}},
		{"moved within itself", booked(1, ana, "big pot", "11:00", "15:00"), nil},
		{"backwards", booked(0, jo, "big pot", "16:00", "15:00"), EmptyBooking{clock("16:00"), clock("15:00")}},
	}
	for _, tt := range tests {
		if diff := cmp.Diff(tt.want, CheckBooking(tt.b, stand)); diff != "" {
			t.Errorf("%s (-want +got):\n%s", tt.name, diff)
		}
	}
}

// Rye soaks 12 hours, and an hour goes for simmering, draining and filling.
func TestSoakBefore(t *testing.T) {
	if got := (Settings{}).SoakBefore(clock("2 10:00")); !got.Equal(clock("21:00")) {
		t.Errorf("soak at %v", got)
	}
}

// Quarts at pressure at ten: heat off at 11:30, zero about 12:15.
func TestOverrun(t *testing.T) {
	run := begun().say("10:00", ana, AtPressure{})
	lost := begun().say("10:00", ana, AtPressure{}).say("10:30", ana, PressureLost{}).say("11:00", ana, PressureBack{})
	tests := []struct {
		name string
		told *teller
		next Booking
		want string
	}{
		{"in time", run, booked(3, jo, "big pot", "12:30", "16:00"), ""},
		{"too long by ten minutes", run, booked(3, jo, "big pot", "12:05", "16:00"), "ping 10:00 booking overrun to 2, due: run/12/overrun/3"},
		{"another cooker", run, booked(3, jo, "small pot", "12:00", "16:00"), ""},
		{"the cook's own", run, booked(3, ana, "big pot", "12:00", "16:00"), ""},
		{"since the hold started again: zero at 13:15", lost, booked(3, jo, "big pot", "12:30", "16:00"), "ping 11:00 booking overrun to 2, due: run/12/overrun/3"},
		{"over before the run", run, booked(3, jo, "big pot", "06:00", "08:00"), ""},
	}
	for _, tt := range tests {
		if got := due(tt.told.run(t, pot()).WantsOf([]Booking{tt.next})); got != tt.want {
			t.Errorf("%s: %q, want %q", tt.name, got, tt.want)
		}
	}
	if got := begun().run(t, pot()).WantsOf([]Booking{booked(3, jo, "big pot", "09:00", "16:00")}); got != nil {
		t.Errorf("a run that isn't lit runs into nothing: %v", got)
	}
}

func TestFindBooking(t *testing.T) {
	stand := []Booking{booked(1, ana, "big pot", "10:00", "14:00"), booked(2, jo, "big pot", "15:00", "16:00"), booked(3, ana, "big pot", "17:00", "18:00")}
	for _, tt := range []struct {
		who  MemberNo
		at   string
		want EntryNo
	}{{ana, "09:00", 1}, {ana, "12:00", 1}, {ana, "14:00", 3}, {jo, "12:00", 2}, {mik, "12:00", 0}} {
		if b, ok := FindBooking(stand, tt.who, clock(tt.at)); b.No != tt.want || ok != (tt.want > 0) {
			t.Errorf("booking of %d at %s is %d, want %d", tt.who, tt.at, b.No, tt.want)
		}
	}
}

func TestGearDue(t *testing.T) {
	zone := time.FixedZone("east", 3600)
	checked := func(at string, parts ...Part) Record {
		return Record{At: clock(at), Entry: GearChecked{"big pot", parts}}
	}
	failed := func(at string, p Part) Record {
		return Record{At: clock(at), Entry: GearFailed{Cooker: "Big Pot", Part: p}}
	}
	lit := begun().say("09:10", ana, HeatOn{})
	tests := []struct {
		name  string
		told  []Record
		runs  []*teller
		at    string
		parts []Part
		bad   []Part
	}{
		{"first of the day", nil, nil, "09:00", []Part{Gasket, Vent, Gas}, nil},
		{"looked at today", []Record{checked("08:00", Gasket, Vent, Gas)}, nil, "09:00", nil, nil},
		{"the gas was not", []Record{checked("08:00", Gasket, Vent)}, nil, "09:00", []Part{Gas}, nil},
		{"looked at yesterday", []Record{checked("08:00", Gasket, Vent, Gas)}, nil, "2 09:00", []Part{Gasket, Vent, Gas}, nil},
		{"second of the day", nil, []*teller{lit}, "14:00", nil, nil},
		{"put on and never lit", nil, []*teller{begun()}, "14:00", []Part{Gasket, Vent, Gas}, nil},
		{"lit, and it is the next day in the zone", nil, []*teller{lit}, "23:30", []Part{Gasket, Vent, Gas}, nil},
		{"the gas ran out", []Record{failed("10:00", Gas)}, []*teller{lit}, "14:00", nil, []Part{Gas}},
		{"and was changed", []Record{checked("11:00", Gas), failed("10:00", Gas)}, []*teller{lit}, "14:00", nil, nil},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			var runs []Run
			for _, r := range tt.runs {
				runs = append(runs, r.run(t, pot()))
			}
			ask, ok := GearDue("big pot", FoldGear(tt.told), runs, clock(tt.at), zone)
			if diff := cmp.Diff(GearAsk{"big pot", tt.parts, tt.bad}, ask); diff != "" || ok != (len(tt.parts)+len(tt.bad) > 0) {
				t.Errorf("asked: %v (-want +got):\n%s", ok, diff)
			}
		})
	}
}

func TestGaugeIsCheckedYearly(t *testing.T) {
	g := FoldGear([]Record{
		{At: clock("08:00"), Entry: GearChecked{"Big Pot", []Part{Gasket}}},
		{At: clock("09:00"), Entry: GaugeReads{Cooker: "big pot", Low: 7}},
	})
	want := []Ping{{Key: "gear/big pot/gauge", Due: clock("09:00").AddDate(1, 0, 0), Kind: GaugeCheckDue, Loudness: NotePing, About: "gear/big pot"}}
	if diff := cmp.Diff(want, g[0].Wants(CookerIs{Name: "big pot", Gauge: Dial})); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
	if got := g[0].Wants(CookerIs{Gauge: Weight}); got != nil {
		t.Errorf("a weight doesn't drift: %v", got)
	}
}
