package phrase

import (
	"fmt"
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
	},
	match: matchTell,
}

// told is one thing that happens to a run, in the words for it; the first of the
// words print it. Loose ones are also said between people.
type told struct {
	entry kitchen.RunEntry
	kind  kitchen.Kind
	loose []string
	plain []string
}

// stages are the things that are told in words alone.
var stages = [...]told{
	{kitchen.HeatOn{}, kitchen.KindHeatOn, []string{"lit it", "on the stove", "put it on the stove", "lit", "it's lit", "its lit", "fire on", "it's on the stove", "its on the stove", "turned it on"}, []string{
		"heat on", "heat is on", "heat's on", "heats on", "flame on", "flame is on", "flame's on", "flames on", "burner on", "burner is on", "burner's on",
		"stove on", "stove is on", "stove's on", "turned the heat on", "turned on the heat", "heat going", "heating up", "started heating", "lit the burner", "lit the stove",
		"lit the gas", "gas on", "started the heat", "turned the flame on", "lit the pot", "turned the burner on", "heating",
	}},
	{kitchen.Steam{}, kitchen.KindSteam, []string{"steam", "steaming", "venting"}, []string{
		"steam is coming out", "steam coming out", "steam comes out", "started venting", "vent started", "vent start", "steaming now", "venting now",
		"steam from the vent", "steam out of the vent", "steady steam", "steam plume", "full steam", "got steam", "there's steam", "theres steam", "steam is out",
		"steady plume", "it started steaming", "it started venting", "started steaming", "starts steaming", "vent is steaming", "steam is on", "begin venting",
	}},
	{kitchen.VentClosed{}, kitchen.KindVentClosed, []string{"vented"}, []string{
		"weight on", "weight is on", "weight's on", "weights on", "vent done", "vent is done", "vent over", "vent closed", "closed the vent", "venting done",
		"done venting", "finished venting", "vented and closed", "put the weight on", "weight went on", "vent shut", "shut the vent", "vent is closed",
		"jiggler on", "rocker on", "regulator on", "petcock closed", "closed the petcock", "venting over", "venting is done", "venting finished", "weight's down",
		"put weight on", "weights are on",
	}},
	{kitchen.AtPressure{}, kitchen.KindAtPressure, nil, []string{
		"at pressure", "up to pressure", "at full pressure", "full pressure", "pressure reached", "reached pressure", "made pressure", "hit pressure",
		"under pressure", "pressure is up", "pressure's up", "pressure up", "came up to pressure", "come up to pressure", "it came up", "rocking", "weight is rocking", "weight's rocking",
		"weight rocks", "jiggling", "up at pressure", "got to pressure", "pressurised", "pressurized", "on pressure",
	}},
	{kitchen.PressureLost{}, kitchen.KindPressureLost, nil, []string{
		"lost pressure", "pressure lost", "pressure is lost", "pressure's lost", "losing pressure", "it lost pressure", "pressure gone", "pressure's gone",
		"pressure is gone", "pressure is dropping", "pressure's dropping", "pressure dropping", "pressure is falling", "pressure falling", "pressure's falling",
		"pressure fell", "pressure is going down", "lost the pressure", "pressure went down", "not holding pressure", "pressure dropped", "dropping pressure",
	}},
	{kitchen.PressureBack{}, kitchen.KindPressureBack, []string{"it's back up", "its back up", "back up"}, []string{
		"pressure back", "pressure is back", "pressure's back", "back at pressure", "back to pressure", "back up to pressure", "pressure's back up",
		"pressure is back up", "pressure back up", "back under pressure", "got pressure back", "pressure came back", "back on pressure", "at pressure again",
		"back up at pressure",
	}},
	{kitchen.Dipped{}, kitchen.KindDipped, nil, []string{"pressure dipped", "pressure dip", "a pressure dip", "short pressure dip", "dip in pressure"}},
	{kitchen.HeatOff{}, kitchen.KindHeatOff, []string{
		"turned it off", "it's off", "its off", "it is off", "switched it off", "off", "turned off", "shut it off", "off the heat", "took it off", "turned that off",
		"off the stove", "switched off", "i turned it off",
	}, []string{
		"heat off", "heat is off", "heat's off", "heats off", "flame off", "flame is off", "flame's off", "flames off", "burner off", "burner is off",
		"burner's off", "stove off", "stove is off", "stove's off", "turned the heat off", "turned off the heat", "turned off the stove", "heat out", "fire off",
		"turned the stove off", "turned the flame off", "turned off the flame", "turned the burner off", "turned off the burner", "switched the heat off", "killed the heat",
		"heat was off", "flame was off", "gas off", "gas is off", "gas's off", "turned the gas off", "turned off the gas", "took it off the heat", "off heat",
		"shut off the heat", "fire is off", "fire out", "cut the heat", "turned the pot off", "turned off the pot", "turned the cooker off",
	}},
	{kitchen.AtZero{}, kitchen.KindAtZero, []string{"zero", "at zero", "at zero now", "lid off", "lid is off", "lid's off", "lid open", "opened it", "lids off"}, []string{
		"gauge at zero", "gauge is at zero", "gauge says zero", "gauge shows zero", "gauge reads zero", "pressure at zero", "pressure is at zero", "zero pressure",
		"pressure zero", "down to zero", "came down to zero", "reached zero", "hit zero", "dropped to zero", "gauge zero", "zero on the gauge", "fell to zero",
		"pressure is zero", "pressure's at zero", "no pressure left", "zero psi", "gauge is zero", "gauge on zero", "opened the pot", "opened the cooker",
		"opened the lid", "lid off the pot",
	}},
	{kitchen.OutOfPot{}, kitchen.KindOutOfPot, []string{"they're out", "they are out", "theyre out", "took them out", "all out", "on the rack", "everything is out", "everything's out", "everything out"}, []string{
		"out of the pot", "out of the cooker", "out of the canner", "bags are out", "jars are out", "bags out", "jars out", "bags are out on the rack", "bags out on the rack",
		"jars are out on the rack", "jars out on the rack", "took the bags out", "took the jars out", "took out the bags", "took out the jars", "unloaded", "bags on the rack",
		"jars on the rack", "took them out of the pot", "unloaded the pot", "unloaded the cooker", "out on the rack", "the bags are out", "the jars are out",
		"lifted them out", "lifted the bags out", "bags are out of the pot", "jars are out of the pot", "took everything out", "bags are on the rack", "jars are on the rack",
		"emptied the pot",
	}},
	{kitchen.CalledOff{}, kitchen.KindCalledOff, []string{
		"called off", "call it off", "called it off", "calling it off", "abort", "aborted", "scrap it", "scrapped", "scrapped it",
		"it's off for today", "abandon it", "abandoned", "calling off", "call off",
	}, []string{
		"call off the run", "cancel the run", "run called off", "scrap the run", "abort the run", "called off the run", "run is off", "cancel this run", "call the run off",
		"called the run off", "stop the run", "cancel run", "abandon the run",
	}},
}

// preparing are the steps of the preparation, told in words alone.
var preparing = [...]told{
	{kitchen.PrepBegun{What: kitchen.Soaking}, kitchen.KindPrepBegun, []string{"soaking", "soak"}, []string{
		"grain is soaking", "grain's soaking", "started soaking", "started the soak", "soak started", "soaking the grain", "grain is in water",
		"grain's in water", "grain's in the water", "put the grain in to soak", "put the grain to soak", "grain soaking", "soak begun", "put grain to soak", "started to soak",
		"grain is in the water", "rye is soaking", "rye soaking", "rinsed and soaking", "soaking the rye", "soaking rye",
	}},
	{kitchen.PrepBegun{What: kitchen.Simmering}, kitchen.KindPrepBegun, []string{"simmering", "simmer"}, []string{
		"grain's in the pot", "grain is in the pot", "grain in the pot", "grain is simmering", "grain's simmering", "started simmering", "grain simmering",
		"boiling the grain", "grain is boiling", "grain's boiling", "simmer started", "started the simmer", "simmering the grain", "grain's on", "grains in the pot",
		"rye is simmering", "rye's in the pot", "rye is in the pot", "rye simmering",
	}},
	{kitchen.PrepBegun{What: kitchen.Draining}, kitchen.KindPrepBegun, []string{"draining", "drain"}, []string{
		"grain is draining", "grain's draining", "started draining", "in the colander", "grain in the colander", "draining the grain", "grain draining", "in the strainer",
		"grain's in the colander", "rye is draining",
	}},
	{kitchen.PrepBegun{What: kitchen.Drying}, kitchen.KindPrepBegun, []string{"drying"}, []string{
		"grain is drying", "grain's drying", "spread to dry", "spread out to dry", "grain spread out", "steaming off", "steam drying", "grain drying", "started drying",
		"spread the grain", "spread the grain out", "drying the grain", "rye is drying",
	}},
	{kitchen.PrepEnded{What: kitchen.Soaking}, kitchen.KindPrepEnded, []string{"soaked"}, []string{
		"soak done", "soaking done", "done soaking", "finished soaking", "soak over", "soak is done", "soaking is done", "soak finished", "grain is soaked", "soaking over",
	}},
	{kitchen.PrepEnded{What: kitchen.Simmering}, kitchen.KindPrepEnded, []string{"simmered"}, []string{
		"simmer done", "simmering done", "done simmering", "finished simmering", "simmer over", "simmer is done", "simmering is done", "water is gone",
		"grain is simmered", "simmered out", "simmering over",
	}},
	{kitchen.PrepEnded{What: kitchen.Draining}, kitchen.KindPrepEnded, []string{"drained"}, []string{
		"draining done", "done draining", "drain done", "finished draining", "grain is drained", "drained it", "drained the grain", "grain drained", "draining is done",
		"draining over",
	}},
	{kitchen.PrepEnded{What: kitchen.Drying}, kitchen.KindPrepEnded, []string{"dried"}, []string{
		"drying done", "done drying", "finished drying", "surface dry", "grain is dry", "surface is dry", "drying is done", "grain is dried", "drying over",
	}},
	{kitchen.PrepEnded{}, kitchen.KindPrepEnded, nil, []string{"prep done", "preparation done", "prep is done", "preparation is done", "done with the prep"}},
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
	// ask is what is open about a temperature.
	ask *scaleAsk
}

// events are the ways to tell something: the longest is taken.
var events = [...]func(cursor, telling) (event, cursor, bool){
	func(c cursor, _ telling) (event, cursor, bool) {
		t, d, loose, ok := stage(c)
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
		if !ok || t.units != nil && !isReading(ev.entry) || len(t.entries) > 0 && !apart && !same {
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
		return c
	}
}

func (t telling) done(d cursor) (Intent, cursor, bool) {
	in := Tell{Which: t.which, When: t.when, Entries: t.entries}
	d.plain = t.plain || t.when != nil || t.which != (Which{})
	d.near = t.near
	if t.near != nil && t.near.Example == "" {
		t.near.Example = in.String()
	}
	if t.ask != nil {
		d.ask = t.question(in)
	}
	return in, d, true
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
		kitchen.TempRead, kitchen.WaterLeft, kitchen.WaterIn, kitchen.CalledOff, kitchen.TookOver, kitchen.HandOffered, kitchen.HandAccepted,
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

// leadingRun reads which run or cooker is spoken of: "#12", "12", "12.3", "run
// 12", "the big pot".
func leadingRun(c cursor) (Which, []kitchen.UnitNo, cursor) {
	d := c.over("on", "in", "for", "the", "our", "run", "no")
	if n, e, ok := unitAlone(d); ok {
		return Which{}, []kitchen.UnitNo{n}, e
	}
	switch t := d.token().(type) {
	case RunRef:
		return Which{Run: t.Ref.Run}, t.Ref.Units, d.use(1)
	case Number:
		if t.Ref != nil {
			return Which{Run: t.Ref.Run}, t.Ref.Units, d.use(1)
		}
		if run, e, ok := d.run(); ok {
			return Which{Run: run}, nil, e
		}
	}
	if w, e, ok := pot(d); ok {
		return w, nil, e
	}
	return Which{}, nil, c
}

// unitAlone reads "bag 2", "jar no 3": a unit of a run that isn't named.
func unitAlone(c cursor) (kitchen.UnitNo, cursor, bool) {
	v, isVessel := c.token().(VesselWord)
	if !(isVessel && !v.Container.Sized() || c.word(0) == "unit") {
		return 0, c, false
	}
	d := c.use(1).over("no", "nr", "number", "#")
	n, ok := d.token().(Number)
	no, isWhole := whole(n.Value)
	return kitchen.UnitNo(no), d.use(1), ok && isWhole && !n.Word && no >= 1 && no <= mostUnits
}

// trailingRun reads "on #12", "in the big pot", "of 12"; "call off 12" needs no
// such word.
func trailingRun(c cursor, e kitchen.Entry) (Which, cursor, bool) {
	d := c.over("on", "in", "for", "of", "the", "at", "with", "our", "run", "this is")
	if r, ok := d.token().(RunRef); ok && len(r.Ref.Units) == 0 {
		return Which{Run: r.Ref.Run}, d.use(1), true
	}
	if _, off := e.(kitchen.CalledOff); d.i == c.i && !off {
		return Which{}, c, false
	}
	if run, e, ok := d.run(); ok && d.word(-1) != "at" {
		return Which{Run: run}, e, true
	}
	w, d, ok := pot(d)
	return w, d, ok && d.i > c.i
}

// sizes are what people call a cooker that has no name yet.
var sizes = set("big small large little old new other tall red blue green black")

// pot reads the name of a cooker. A noun alone ("the pot") says nothing about
// which.
func pot(c cursor) (Which, cursor, bool) {
	if n, ok := c.token().(Name); ok && n.Of == CookerName {
		return Which{Cooker: n.Text}, c.use(1), true
	}
	if cookerNouns[c.word(0)] {
		return Which{}, c.skip(1), true
	}
	name, d, ok := cookerRef(c)
	if !ok || !slices.ContainsFunc(c.s.names.Cookers, func(n string) bool { return n == name }) && !(sizes[c.word(0)] && cookerNouns[c.word(1)]) {
		return Which{}, c, false
	}
	return Which{Cooker: name}, d, true
}

// String prints the telling so that it parses back.
func (t Tell) String() string {
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

// before prints which run is meant in front of something.
func (w Which) before(units []kitchen.UnitNo) string {
	switch {
	case w.Run != 0:
		return kitchen.Ref{Run: w.Run, Units: units}.String() + " "
	case len(units) > 0:
		return fmt.Sprintf("unit %d ", units[0])
	case w.Cooker != "":
		return w.Cooker + " "
	}
	return ""
}

// behind prints which run is meant behind something.
func (w Which) behind(joint string) string {
	switch {
	case w.Run != 0:
		return " " + joint + w.Run.String()
	case w.Cooker != "":
		return " " + joint + "the " + w.Cooker
	}
	return ""
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
	case kitchen.HeatOn, kitchen.Steam, kitchen.VentClosed, kitchen.HeatOff, kitchen.AtZero, kitchen.OutOfPot, kitchen.CalledOff,
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
