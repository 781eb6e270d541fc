package wording

import (
	"errors"
	"testing"
	"time"

	"ryebell/internal/calc/unit"
	"ryebell/internal/chat"
	"ryebell/internal/kitchen"
)

const (
	ana kitchen.MemberNo = iota + 1
	jo
	mika
)

func name(m kitchen.MemberNo) string {
	return map[kitchen.MemberNo]string{ana: "Ana", jo: "Jo", mika: "Mika"}[m]
}

// day is a cook day in which things are said of one run.
type day struct {
	run      kitchen.Run
	plan     kitchen.Plan
	settings kitchen.Settings
	now      time.Time
	no       kitchen.EntryNo
	given    map[string]bool
}

func bags() kitchen.Order {
	return kitchen.Order{Items: []kitchen.Item{{Count: 3, Container: kitchen.Container{Vessel: kitchen.Bag, Weight: fiveLb}, Route: kitchen.Agar}}}
}

func jars() kitchen.Order {
	return kitchen.Order{Items: []kitchen.Item{{Count: 7, Container: kitchen.Container{Vessel: kitchen.Jar, Volume: quart}, Route: kitchen.LiquidCulture}}}
}

// newDay puts an order on at nine, in a kitchen with a big pot.
func newDay(t testing.TB, o kitchen.Order, by kitchen.MemberNo, changes ...kitchen.Change) *day {
	t.Helper()
	d := &day{now: time.Date(2026, 3, 2, 9, 0, 0, 0, time.UTC), given: map[string]bool{}}
	d.settings = kitchen.Settings{}.With(kitchen.CookerIs{Name: "big pot", Takes: []kitchen.Capacity{
		{Count: 7, Container: kitchen.Container{Vessel: kitchen.Jar, Volume: quart}},
		{Count: 3, Container: kitchen.Container{Vessel: kitchen.Bag, Weight: fiveLb}},
	}}).With(changes...)
	p, err := d.settings.Work(o)
	if err != nil {
		t.Fatalf("work out %v: %v", o, err)
	}
	d.plan, d.no = p, 1
	rec := kitchen.Record{No: 1, By: ana, At: d.now, Written: d.now, Entry: kitchen.RunBegun{Run: 12, Cooker: "big pot", Order: o, Cook: by, Room: 1}}
	d.run, err = kitchen.FoldRun([]kitchen.Record{rec}, func(time.Time) kitchen.Settings { return d.settings })
	if err != nil {
		t.Fatalf("begin: %v", err)
	}
	return d
}

func (d *day) first(caution string) Newness {
	if d.given[caution] {
		return Known
	}
	d.given[caution] = true
	return New
}

func (d *day) begun() chat.Post {
	return Begun(BegunView{Run: d.run, Plan: d.plan, Load: 1, Now: d.now, Who: name, First: d.first})
}

// at moves the clock on to a time of the same day, or the next.
func (d *day) at(clock string) *day {
	t, err := time.Parse("15:04", clock)
	if err != nil {
		panic(err)
	}
	to := time.Date(d.now.Year(), d.now.Month(), d.now.Day(), t.Hour(), t.Minute(), 0, 0, time.UTC)
	if to.Before(d.now) {
		to = to.AddDate(0, 0, 1)
	}
	d.now = to
	return d
}

// say says that something happened so long ago, and gives the answer.
func (d *day) say(by kitchen.MemberNo, e kitchen.RunEntry, ago time.Duration) chat.Post {
	d.no++
	rec := kitchen.Record{No: d.no, By: by, At: d.now.Add(-ago), Written: d.now, Entry: e}
	was := d.run
	next, err := d.run.Apply(rec, d.settings)
	var why kitchen.Refusal
	if errors.As(err, &why) {
		return RefusedHere(why, Asked{Now: d.now, Who: name})
	}
	d.run = next
	return Run(RunView{Run: d.run, Told: e, At: rec.At, No: rec.No, Was: &was, Now: d.now, Who: name, First: d.first})
}

// pings are those due now, each as it is said.
func (d *day) pings() []PingView {
	var out []PingView
	for _, p := range d.run.Wants(d.settings) {
		out = append(out, PingView{Ping: p, Run: d.run, Now: p.Due, To: chat.Mention{Name: "Ana"}})
	}
	return out
}

func psiSaid(v float64) *unit.GaugeKPa { g := unit.PSI(v); return &g }
