package phrase

import (
	"reflect"
	"slices"
	"strings"
	"sync"
	"time"

	"ryebell/internal/kitchen"
)

var tellGrammar = grammar{
	kind: KindTell,
	examples: []string{
		"steam",
		"at 15 since 14:05",
		"vent done, weight on",
		"#12 heat off 20 min ago",
		"dropped to 11 for 4 min",
		"the big pot is at pressure",
		"12.3 is 31 outside",
		"31 between the bags",
		"1 litre left in the pot",
		"soaking since 9pm",
		"lid off, bags are out on the rack",
		"#12 is gone",
		"used up 12",
		"12 is all used",
	},
	match: matchTell,
}

// ToldOf is the entry of a kind that is told in words alone; false for any other.
func ToldOf(k kitchen.Kind) (kitchen.RunEntry, bool) {
	for _, s := range stages {
		if s.kind == k {
			return s.entry, true
		}
	}
	return nil, false
}

// stage takes the longest words for something that happens to a run.
func stage(c cursor) (t told, end cursor, loose, ok bool) {
	end = c
	for _, all := range [...][]told{stages[:], preparing[:]} {
		for _, s := range all {
			if d, fits := c.phrase(s.loose...); fits && d.i > end.i {
				t, end, loose, ok = s, d, true, true
			}
			if d, fits := c.phrase(s.plain...); fits && d.i > end.i {
				t, end, loose, ok = s, d, false, true
			}
		}
	}
	return t, end, loose, ok
}

// event is one thing told, as far as it has been read.
type event struct {
	entry kitchen.RunEntry
	loose bool
	// which and units say behind it where a reading was taken: "41 on 1.1".
	which Which
	units []kitchen.UnitNo
	// ask is what is open about a temperature.
	ask *scaleAsk
}

// events are the ways to tell something: the longest is taken.
var events = [...]func(cursor, telling) (event, cursor, bool){
	func(c cursor, _ telling) (event, cursor, bool) {
		t, d, loose, ok := stage(c)
		if w := c.word(-1); ok && d.i-c.i <= 2 && t.kind == kitchen.KindPressureBack && c.word(0) == "back" && d.word(-1) != "up" && w != "it's" && w != "its" && w != "is" {
			return event{}, c, false // "its back" is, "back" is who comes home
		}
		return event{entry: t.entry, loose: loose}, d, ok
	},
	gaugeTold, dipTold, waterTold, tempTold, runCancelled,
}

// runCancelled reads "cancel 12": alone the word can be about anything.
func runCancelled(c cursor, _ telling) (event, cursor, bool) {
	d, ok := c.phrase("cancel", "abort", "scrap", "abandon")
	_, _, run := d.over("run", "number").run()
	return event{entry: kitchen.CalledOff{}}, d, ok && run
}

// telling is a telling while it is being read.
type telling struct {
	which Which
	units []kitchen.UnitNo
	// linked is true when "is" or the like stands between the run and what is
	// told of it.
	linked bool
	when   *Moment
	// first is true when the time was said before everything.
	first   bool
	entries []kitchen.RunEntry
	plain   bool
	near    *Near
	open    int
	ask     *scaleAsk
}

// matchTell reads which run, when, and what happened to it, in any order that
// people say it in.
func matchTell(c cursor) (Intent, cursor, bool) {
	first := c.over(leads...)
	which, units, d := leadingRun(first)
	if e, two := both(first); two {
		which, units, d = Which{Both: true}, nil, e
	}
	in, end, ok := tellOf(c, d, telling{which: which, units: units})
	if !ok && d.i > first.i { // the number in front is what a thermometer showed
		in, end, ok = tellOf(c, first, telling{})
	}
	return in, end, ok
}

// tellOf reads a telling of a run at d, behind its number.
func tellOf(c, d cursor, t telling) (Intent, cursor, bool) {
	if t.which != (Which{}) || t.units != nil {
		e := d.over("is", "are", "was", "has", "'s", "it's", "its", "reads", "shows", "measures", "now", "=", "at about")
		e, colon := e.mark(":,-=")
		_, sharp := d.ahead(-1).(RunRef)
		t.linked = e.i > d.i || colon || sharp || t.units != nil
		d = e.over(leads...)
	}
	if m, e, ok := moment(d, nil); ok {
		if f, _ := e.mark(":,"); !f.done() {
			t.when, t.first, d = &m, true, f.over(leads...)
		}
	}
	if !d.tells() {
		return nil, c, false
	}
	d, ok := t.events(d)
	if q, is := d.token().(Mark); !ok || is && q.Rune == '?' {
		return nil, c, false
	}
	return t.done(d)
}

// tellStarts are the words that something told can begin with.
var tellStarts = sync.OnceValue(func() map[string]bool {
	starts := map[string]bool{}
	add := func(phrases []string) {
		for _, p := range phrases {
			first, _, _ := strings.Cut(p, " ")
			starts[first] = true
		}
	}
	for _, all := range [...][]told{stages[:], preparing[:]} {
		for _, s := range all {
			add(s.loose)
			add(s.plain)
		}
	}
	for _, p := range places {
		add(p.words)
		add(p.outside)
	}
	for _, words := range [...][]string{gaugeAt, gaugeBack, gaugeSays, dipTo, dipAlone, potDry, waterAdded, waterPut, waterFilled, feels, tempLinks, {"cancel", "abort", "scrap", "abandon", "left", "leftover"}} {
		add(words)
	}
	return starts
})

// tells says quickly whether something told can begin here.
func (c cursor) tells() bool {
	switch c.token().(type) {
	case Quantity, Range:
		return true
	case Number, VesselWord, GrainWord:
		switch c.ahead(1).(type) {
		case Word, nil, When, Mark, Number:
			return true
		}
		return false
	}
	return tellStarts()[c.word(0)]
}

// leads are words before what happened that change nothing in it.
var leads = []string{
	"it's", "its", "it is", "it", "i", "we", "we're", "we are", "we have", "we've got", "i've got", "now", "and", "the", "just", "got", "ok", "so", "finally", "sorry", "about", "there's",
	"update", "everything", "fyi", "yes", "yay", "ok so",
}

// events reads what happened, several things parted by commas; a thing with a
// time of its own ends the telling.
func (t *telling) events(c cursor) (cursor, bool) {
	end := c
	for len(t.entries) < maxSegments {
		d := c
		if len(t.entries) > 0 {
			d = d.parted().over(leads...)
		}
		apart := d.i > c.i
		ev, d, ok := longestEvent(d, *t)
		same := len(t.entries) > 0 && ok && reflect.DeepEqual(t.entries[len(t.entries)-1], ev.entry)
		if !ok || t.units != nil && !isReading(ev.entry) || ev.units != nil && len(t.entries) > 0 || len(t.entries) > 0 && !apart && !same {
			break
		}
		before := *t
		d = t.tail(d, ev.entry)
		if t.when != before.when && len(before.entries) > 0 && !same || before.when != nil && !t.first && !same {
			*t = before
			break
		}
		t.add(ev, same)
		if d.near != nil {
			t.near = d.near
		}
		c, end = d, d
	}
	return end, len(t.entries) > 0
}

func (t *telling) add(ev event, same bool) {
	t.plain = t.plain || !ev.loose || len(t.entries) > 0
	if same {
		return
	}
	if r, ok := ev.entry.(kitchen.TempRead); ok {
		r.Units = t.units
		if ev.units != nil {
			r.Units, t.which = ev.units, ev.which
		}
		ev.entry = r
	}
	if ev.ask != nil && t.ask == nil {
		t.ask, t.open = ev.ask, len(t.entries)
	}
	t.entries = append(t.entries, ev.entry)
}

func isReading(e kitchen.RunEntry) bool {
	_, ok := e.(kitchen.TempRead)
	return ok
}

func longestEvent(c cursor, t telling) (best event, end cursor, ok bool) {
	end = c
	for _, read := range events {
		if ev, d, fits := read(c, t); fits && d.i > end.i {
			best, end, ok = ev, d, true
		}
	}
	return best, end, ok
}

// tail reads when it happened, and to which run, behind what happened.
func (t *telling) tail(c cursor, e kitchen.RunEntry) cursor {
	for {
		c = c.over("now", "again", "overnight", "sorry", "finally", "already", "all", "everyone", "folks", "just now", "at last", "in the end", "i think", "thx", "too", "for now")
		if m, d, ok := moment(c.parted(), e); ok && t.when == nil && (d.i == c.i || c.parted().i == c.i || d.parted().done()) {
			t.when, c = &m, d
			continue
		}
		if m, d, ok := forNow(c, e); ok && t.when == nil {
			t.when, c = &m, d
			continue
		}
		if w, d, ok := trailingRun(c, e); ok && t.which == (Which{}) {
			t.which, c = w, d
			continue
		}
		if d, two := both(c); two && t.which == (Which{}) {
			t.which, c = Which{Both: true}, d
			continue
		}
		return c
	}
}

func (t telling) done(d cursor) (Intent, cursor, bool) {
	if t.which.Both && slices.ContainsFunc(t.entries, ofOne) {
		return nil, d, false // "both are 31" can be two bags
	}
	if t.when != nil && *t.when == (Moment{Now: true}) {
		t.when = nil // "0 min ago"
	}
	in := Tell{Which: t.which, When: t.when, Entries: t.entries}
	d.plain = t.plain || t.when != nil || t.which != (Which{Mine: t.which.Mine, Both: t.which.Both}) // "mine is off" can be anything
	d.near = t.near
	if t.near != nil && t.near.Example == "" {
		t.near.Example = in.String()
	}
	if t.ask != nil {
		d.ask = t.question(in)
	}
	return in, d, true
}

// ofOne reports whether something is told of one run at a time: what was measured.
func ofOne(e kitchen.RunEntry) bool {
	switch kitchen.KindOf(e) {
	case kitchen.KindTempRead, kitchen.KindWaterIn, kitchen.KindWaterLeft, kitchen.KindDipped:
		return true
	case kitchen.KindRunBegun, kitchen.KindPrepBegun, kitchen.KindPrepEnded, kitchen.KindHeatOn, kitchen.KindSteam, kitchen.KindVentClosed, kitchen.KindAtPressure,
		kitchen.KindPressureLost, kitchen.KindPressureBack, kitchen.KindGaugeRead, kitchen.KindHeatOff, kitchen.KindAtZero, kitchen.KindOutOfPot, kitchen.KindRunGone,
		kitchen.KindCalledOff, kitchen.KindTookOver, kitchen.KindHandOffered, kitchen.KindHandAccepted, kitchen.KindPingAnswered:
		return false
	}
	panic("kind " + kitchen.KindOf(e).String())
}

// moment reads "since 14:05", "at 2:05 pm", "20 min ago", "since 5 min". An hour
// alone, "at 4", is none behind what a gauge can show a figure for.
func moment(c cursor, e kitchen.RunEntry) (Moment, cursor, bool) {
	d := c.over("since", "since about", "from", "already since", "around", "about", "at about", "since around", "as of")
	since := d.i > c.i
	if m, f, ok := d.when(); ok && m.Shift <= 0 {
		return m, f, true
	}
	if p, ok := d.token().(Period); ok && since && p.Length > 0 {
		return Moment{Shift: -p.Length}, d.use(1), true
	}
	f := d.over("at", "at about")
	n, f, ok := f.number()
	hour, isWhole := whole(n)
	since = since || c.word(0) == "at" && !ofGauge(e)
	if !ok || !since || !isWhole || hour < 1 || hour > 23 {
		return Moment{}, c, false
	}
	return Moment{Clock: &ClockTime{Hour: hour, Half: hour > 12}}, f, true
}

// ofGauge reports whether a figure behind it would be the gauge's, or whether
// nothing was told yet.
func ofGauge(e kitchen.RunEntry) bool {
	switch e.(type) {
	case nil, kitchen.AtPressure, kitchen.GaugeRead, kitchen.PressureLost, kitchen.PressureBack, kitchen.Dipped, kitchen.AtZero:
		return true
	case kitchen.RunBegun, kitchen.PrepBegun, kitchen.PrepEnded, kitchen.HeatOn, kitchen.Steam, kitchen.VentClosed, kitchen.HeatOff, kitchen.OutOfPot,
		kitchen.TempRead, kitchen.WaterLeft, kitchen.WaterIn, kitchen.RunGone, kitchen.CalledOff, kitchen.TookOver, kitchen.HandOffered, kitchen.HandAccepted,
		kitchen.PingAnswered:
		return false
	}
	panic(e)
}

// forNow reads "for 10 min" behind something that goes on; how long a soak is to
// take is none.
func forNow(c cursor, e kitchen.RunEntry) (Moment, cursor, bool) {
	d := c.over("for", "for about", "for the last", "for abt", "for some", "for over")
	p, ok := d.token().(Period)
	_, prep := e.(kitchen.PrepBegun)
	_, dip := e.(kitchen.Dipped)
	if !ok || prep || dip || d.i == c.i || p.Length <= 0 {
		return Moment{}, c, false
	}
	return Moment{Shift: -p.Length}, d.use(1).maybe("now", "already"), true
}

// String prints the telling so that it parses back.
func (t Tell) String() string {
	if s, apart := t.unitsApart(); apart {
		return s
	}
	said := make([]string, len(t.Entries))
	dip := false
	var units []kitchen.UnitNo
	for i, e := range t.Entries {
		said[i] = toldText(e)
		if r, ok := e.(kitchen.TempRead); ok && units == nil {
			units = r.Units
		}
		_, dipped := e.(kitchen.Dipped)
		dip = dip || dipped // its length would run into the time behind it
	}
	what := strings.Join(said, ", ")
	if t.When != nil && (len(said) > 1 || dip || t.When.Day.Said) { // "weight on sunday" is on a sunday
		what = t.When.String() + ": " + what
	} else if t.When != nil {
		what += " " + t.When.String()
	}
	return t.Which.before(units) + what
}

// toldText prints one thing told.
func toldText(e kitchen.RunEntry) string {
	for _, all := range [...][]told{stages[:], preparing[:]} {
		for _, s := range all {
			if s.entry == e {
				return firstOf(s)
			}
		}
	}
	switch e := e.(type) {
	case kitchen.AtPressure:
		return "at " + pressureText(e.Gauge)
	case kitchen.GaugeRead:
		return "gauge says " + pressureText(e.Gauge)
	case kitchen.PressureLost:
		return "at " + pressureText(*e.Gauge) + " and falling"
	case kitchen.PressureBack:
		return "back at " + pressureText(e.Gauge)
	case kitchen.Dipped:
		return dipText(e)
	case kitchen.TempRead:
		return temperatureText(e.Temp) + placeText(e.Where)
	case kitchen.WaterLeft:
		return volumeText(e.Water) + " of water left"
	case kitchen.WaterIn:
		if e.Added {
			return "added " + volumeText(e.Water) + " of water"
		}
		return volumeText(e.Water) + " of water in the pot"
	case kitchen.HeatOn, kitchen.Steam, kitchen.VentClosed, kitchen.HeatOff, kitchen.AtZero, kitchen.OutOfPot, kitchen.RunGone, kitchen.CalledOff,
		kitchen.PrepBegun, kitchen.PrepEnded, kitchen.RunBegun, kitchen.TookOver, kitchen.HandOffered, kitchen.HandAccepted,
		kitchen.PingAnswered:
		return ""
	}
	panic(e)
}

func firstOf(s told) string {
	if len(s.plain) == 0 || s.kind == kitchen.KindSteam || s.kind == kitchen.KindAtZero || s.kind == kitchen.KindPrepBegun || s.kind == kitchen.KindCalledOff {
		return s.loose[0]
	}
	return s.plain[0]
}

func dipText(e kitchen.Dipped) string {
	s := "dropped"
	if e.To != nil {
		s += " to " + pressureText(*e.To)
	}
	if e.For != 0 {
		s += " for " + lastedText(e.For)
	}
	return s
}

// lastedText prints a length of time in one unit.
func lastedText(d time.Duration) string {
	if d%time.Minute != 0 {
		return plain(d.Seconds()) + " sec"
	}
	return plain(d.Minutes()) + " min"
}
