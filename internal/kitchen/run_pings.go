package kitchen

import (
	"slices"
	"strconv"
	"time"
)

// Times of the pings, by the design's table. A tap on Not yet, or I've got it,
// starts the ones of its chain anew from then.
const (
	ventFor         = 10 * time.Minute // vent start to closing: load.UsualVent
	nearlyBefore    = 5 * time.Minute
	againFirst      = 5 * time.Minute
	againSecond     = 10 * time.Minute
	againRooms      = 15 * time.Minute
	zeroAgain       = 20 * time.Minute
	waterNotice     = 10 * time.Minute // before the water is down to what must be left
	stillHotAfter   = 5 * time.Minute
	askedOn         = 12 * time.Hour // how long after it was due everybody is asked on
	yetAfter        = 15 * time.Minute
	yetAgain        = 30 * time.Minute
	yetRooms        = 90 * time.Minute
	ventAgain       = 10 * time.Minute
	ventRooms       = 30 * time.Minute // by then much of the water has gone
	simmerAgain     = 10 * time.Minute
	simmerRooms     = 30 * time.Minute
	postponeGuard   = 5 * time.Minute
	postponeYet     = 15 * time.Minute
	postponeSimmer  = 15 * time.Minute
	postponeZero    = 20 * time.Minute
	postponeDue     = 30 * time.Minute
	postponeSoak    = 2 * time.Hour
	postponeCooling = 2 * time.Hour
	afterReading    = 30 * time.Minute
)

// Wants lists the pings that the run wants: what lies ahead, and what was due and
// is not answered by what happened since. Each key is there once; due times are
// before quiet hours and next mornings, see [Shift]. The settings are those of
// now.
func (r Run) Wants(s Settings) []Ping {
	w := wanting{run: r, pot: r.pot}
	if k, ok := s.CookerNamed(r.Cooker); ok {
		w.pot = k
	}
	switch r.Stage {
	case StagePlanned, StageGone:
	case StageHeating:
		w.yet("steam-yet", w.run.times(KindHeatOn), SteamYet)
	case StageRising:
		w.yet("pressure-yet", w.run.times(KindVentClosed), PressureYet)
	case StagePressureLost:
		w.yet("pressure-back", len(w.run.Dips), PressureYet)
	case StagePreparing:
		w.preparing()
	case StageVenting:
		w.venting()
	case StageAtPressure:
		w.holding()
		w.water()
	case StageFalling:
		w.falling()
	case StageCooling:
		w.cooling()
	case StageCool:
		w.cool()
	case StageCalledOff:
		w.calledOff()
	}
	return w.pings
}

// wanting collects the pings of a run.
type wanting struct {
	run   Run
	pot   CookerIs // as it is known now
	pings []Ping
}

// key names a ping of the run: run/12/hold-over/2.
func (r Run) key(name string, n int) string { return r.No.Prefix() + name + "/" + strconv.Itoa(n) }

// again is a ping that follows when nobody answers the first. It comes at least gap
// after the first, or after anything that was told since the first was due: who
// reports late isn't shouted at.
type again struct {
	due  time.Time
	gap  time.Duration
	kind PingKind
}

// add wants a chain of pings: the first, and those that follow when nobody answers.
// None is wanted once somebody said that it is done.
func (w *wanting) add(first Ping, more ...again) {
	if w.run.saidDone(first.Key) {
		return
	}
	first.Room, first.About = w.run.Room, w.run.No.Subject()
	anew, postponed := w.run.postponed(first)
	moved := time.Duration(0)
	if postponed && anew.After(first.Due) {
		moved = anew.Sub(first.Due)
	}
	first.Due = first.Due.Add(moved)
	w.pings = append(w.pings, first)
	quiet := latest(first.Due, w.run.Heard)
	for i, a := range more {
		p := first
		p.Key, p.Kind, p.Due = first.Key+againPart+strconv.Itoa(i+1), a.kind, latest(a.due, quiet.Add(a.gap))
		if a.gap == nextDay && a.kind == first.Kind {
			p.Due = first.Due.Add(nextDay)
		}
		if a.kind == WhoIsThere {
			p.To = 0
		}
		w.pings = append(w.pings, p)
	}
}

// guarded is what follows a guard ping: again after 5 and 10 minutes, then every
// room, and so on.
func guarded(due time.Time, k PingKind) []again {
	return append([]again{
		{due.Add(againFirst), againFirst, k},
		{due.Add(againSecond), againSecond, k},
		{due.Add(againRooms), againRooms, WhoIsThere},
	}, everybody(due, againRooms, againRooms)...)
}

// everybody goes on asking every room when nobody answered so long after a ping was
// due: after a gap, after gaps that double, and then every two hours.
func everybody(due time.Time, asked, gap time.Duration) []again {
	var more []again
	for ; asked+gap <= askedOn; gap = min(2*gap, 2*time.Hour) {
		asked += gap
		more = append(more, again{due.Add(asked), asked, WhoIsThere})
	}
	return more
}

// checkedAgain is what follows a check for zero: twice more, then everybody.
func checkedAgain(due time.Time) []again {
	return append([]again{{due.Add(zeroAgain), zeroAgain, CheckZero}, {due.Add(2 * zeroAgain), 2 * zeroAgain, CheckZero}},
		everybody(due, 2*zeroAgain, againRooms)...)
}

func (w *wanting) preparing() {
	r := w.run
	n := len(r.Preps)
	by := r.Cook
	if n > 0 && r.Preps[n-1].By != 0 {
		by = r.watchedBy(r.Preps[n-1])
	}
	if p, due, on := r.PrepDue(); on {
		first, more := Ping{Key: r.key("prep", n), Due: due, Kind: PrepOver, Loudness: DuePing, To: by}, []again(nil)
		if p.What == Simmering { // a pot on the flame doesn't wait for the morning, and boils dry
			first.Loudness, more = GuardPing, asked(due, PrepOver, simmerAgain, simmerRooms)
		}
		w.add(first, more...)
	}
	if until, stands := r.WetUntil(); stands {
		w.add(Ping{Key: r.key("wet-grain", n), Due: until, Kind: WetGrainStands, Loudness: DuePing, To: by})
	}
}

// watchedBy is who prepares, or who took the run over from then on.
func (r Run) watchedBy(p Preparation) MemberNo {
	for _, s := range slices.Backward(r.Steps) {
		if s.To != 0 && s.At.After(p.From) {
			return s.To
		}
	}
	return p.By
}

// times counts the steps of a kind.
func (r Run) times(k Kind) int {
	n := 0
	for _, s := range r.Steps {
		if s.Kind == k {
			n++
		}
	}
	return n
}

// yet asks after what should long have followed on a step: once more, for what is
// waited for may be on its way; much later, for the flame may have been forgotten,
// everybody.
func (w *wanting) yet(name string, n int, k PingKind) {
	r := w.run
	up, ok := r.Until()
	if r.Stage == StagePressureLost {
		up, ok = r.Since.Add(r.course().ToPressure), true
	}
	if !ok {
		return
	}
	due := up.Add(yetAfter)
	w.add(Ping{Key: r.key(name, n), Due: due, Kind: k, Loudness: GuardPing, To: r.Cook},
		asked(due, k, yetAgain, yetRooms)...)
}

// asked is what follows a ping about a flame whose pot is not at pressure: again
// after a while, then every room, at gaps that grow.
func asked(due time.Time, k PingKind, second, rooms time.Duration) []again {
	return append([]again{{due.Add(second), second, k}, {due.Add(rooms), rooms, WhoIsThere}},
		everybody(due, rooms, rooms-second)...)
}

// venting goes on asking, for a pot that vents at full flame boils dry.
func (w *wanting) venting() {
	due := w.run.Since.Add(ventFor)
	w.add(Ping{Key: w.run.key("vent-over", w.run.times(KindSteam)), Due: due, Kind: VentOver, Loudness: GuardPing, To: w.run.Cook},
		asked(due, VentOver, ventAgain, ventRooms)...)
}

func (w *wanting) holding() {
	r := w.run
	end, ok := r.HoldEnd()
	if !ok {
		return
	}
	if r.Hold.Time > 2*nearlyBefore {
		w.add(Ping{Key: r.key("hold-nearly", r.Attempt()), Due: end.Add(-nearlyBefore), Kind: HoldNearlyOver, Loudness: DuePing, To: r.Cook})
	}
	w.add(Ping{Key: r.key("hold-over", r.Attempt()), Due: end, Kind: HoldOver, Loudness: GuardPing, To: r.Cook}, guarded(end, HoldOver)...)
}

// water warns as soon as the water doesn't cover the hold that runs, and again
// shortly before it is down to what must be left: who has got it can do no more
// than watch, and isn't called again after that.
func (w *wanting) water() {
	r := w.run
	if r.WaterShort() == 0 {
		return
	}
	lasts, _ := r.WaterLasts()
	near := lasts.Add(-waterNotice)
	first := Ping{Key: r.key("water", r.Attempt()), Due: r.Since, Kind: WaterShort, Loudness: GuardPing, To: r.Cook}
	more := []again{
		{near, againFirst, WaterShort},
		{near.Add(againFirst), againSecond, WaterShort},
		{near.Add(againSecond), againRooms, WhoIsThere},
	}
	if r.cookTold() && near.After(r.Since) { // the answer has said it
		first.Due, more = near, []again{
			{near.Add(againFirst), againFirst, WaterShort}, {near.Add(againSecond), againSecond, WhoIsThere},
		}
	}
	end, _ := r.HoldEnd() // from then on the ping of the hold asks
	for _, a := range everybody(near, more[len(more)-1].due.Sub(near), againRooms) {
		if a.due.Before(end) {
			more = append(more, a)
		}
	}
	if got, ok := r.gotIt(first.Key); ok && got.Before(near) {
		more = more[:1]
	} else if ok {
		more = nil
	}
	w.add(first, more...)
}

// cookTold reports whether it was the cook who told that the hold began.
func (r Run) cookTold() bool {
	for _, s := range slices.Backward(r.Steps) {
		if !s.At.After(r.Since) { // a dip stands where it began
			return s.Seen && s.By == r.Cook
		}
	}
	return false
}

func (w *wanting) falling() {
	r := w.run
	due := r.Since.Add(r.fallTime(w.pot))
	w.add(Ping{Key: r.key("zero", len(r.Off)), Due: due, Kind: CheckZero, Loudness: GuardPing, To: r.Cook}, checkedAgain(due)...)
}

// cooling asks for a reading: the first when the load is probably cool, the second
// an hour after a cool skin.
func (w *wanting) cooling() {
	r := w.run
	if due, ok := r.MeasureAgain(); ok {
		w.add(Ping{Key: r.key("measure-again", r.cooled()), Due: due, Kind: MeasureAgain, Loudness: DuePing, To: r.Cook}, again{due, nextDay, MeasureAgain})
		return
	}
	if due, ok := r.ProbablyCool(); ok {
		due = latest(due, r.Since)
		// Who has just measured need not be asked again at once.
		if last, read := r.NewestReading(); read {
			due = latest(due, last.At.Add(afterReading))
		}
		w.add(Ping{Key: r.key("probably-cool", r.cooled()), Due: due, Kind: ProbablyCool, Loudness: DuePing, To: r.Cook}, again{due, nextDay, ProbablyCool})
	}
}

// cooled counts the loads of heat that had to leave: lit again, it cools again.
func (r Run) cooled() int { return max(1, len(r.Off)) }

// cool tells the cook, unless whoever was the cook took the reading. Later readings
// and another cook don't bring it up again.
func (w *wanting) cool() {
	if w.run.coolUntold {
		w.add(Ping{Key: w.run.key("cool", w.run.cooled()), Due: w.run.Since, Kind: CoolNow, Loudness: DuePing, To: w.run.Cook})
	}
}

// calledOff keeps watch over a flame that nobody said to be off, and then over the
// pressure.
func (w *wanting) calledOff() {
	r := w.run
	off, _ := r.LastStep(KindHeatOff)
	switch {
	case r.MayBurn():
		due := r.Since.Add(stillHotAfter)
		w.add(Ping{Key: r.key("still-hot", r.times(KindHeatOn)), Due: due, Kind: StillHot, Loudness: GuardPing, To: r.Cook}, guarded(due, StillHot)...)
	case r.MayPress():
		due := off.At.Add(r.fallTime(w.pot))
		w.add(Ping{Key: r.key("zero", len(r.Off)), Due: due, Kind: CheckZero, Loudness: GuardPing, To: r.Cook}, checkedAgain(due)...)
	}
}

func (r Run) stepSince(k Kind, at time.Time) bool {
	s, ok := r.LastStep(k)
	return ok && !s.At.Before(at)
}
