package kitchen

import "time"

// DigestPrefix begins the keys of the digests; the local date is the rest.
const DigestPrefix = "digest/"

// EarliestDigest is the first time of day for a digest: earlier ones are left out,
// or come twice, on the days when clocks are changed.
const EarliestDigest TimeOfDay = 4 * 60

// week is how far a digest looks ahead.
const week = 7

// DigestAt is when the weekly digest comes, Monday 09:00 until somebody says
// otherwise; false when they want none.
func (s Settings) DigestAt() (DigestIs, bool) {
	d := orElse(s.Digest, DigestIs{Day: time.Monday, At: 9 * 60})
	return d, d.At != 0
}

// Digest is what happened since the last one and what the coming week brings. Now
// is in the kitchen's zone.
type Digest struct {
	Since, Now time.Time
	// Cooked are the runs whose heat went off since; Short are those of them that
	// were not held as long as they should have been, as far as anybody saw.
	Cooked, Short []Run
	CalledOff     []Run
	Gone          []Run
	// Shelf is what stands there, the oldest first.
	Shelf []Run
	// Passing are the limits reached in the coming week, the first first.
	Passing []Passing
	// Bookings are those of the coming week, the earliest first.
	Bookings []Booking
	// Decide is what stands past its last limit, the oldest first; Unmeasured are
	// those that nobody said to be cool.
	Decide, Unmeasured []Run
}

// Passing is a run with a limit that it reaches.
type Passing struct {
	Run   Run
	Limit ShelfLimit
}

// DigestOf makes the digest of a time, of runs in the order in which they were
// begun. The first one has no since and tells of them all.
func DigestOf(runs []Run, bookings []Booking, since, now time.Time) Digest {
	if since.IsZero() && len(runs) > 0 {
		since = runs[0].Begun
	}
	d := Digest{Since: since, Now: now, Shelf: OnShelf(runs, now)}
	for _, r := range runs {
		d.happened(r)
	}
	for _, r := range d.Shelf {
		d.stands(r)
	}
	for _, b := range bookings {
		if b.To.After(now) && b.From.Before(d.until()) {
			d.Bookings = append(d.Bookings, b)
		}
	}
	return d
}

func (d *Digest) until() time.Time { return d.Now.AddDate(0, 0, week) }

func (d *Digest) isNew(at time.Time) bool { return !at.Before(d.Since) && at.Before(d.Now) }

// happened sorts what became of a run since the last digest.
func (d *Digest) happened(r Run) {
	if r.Stage == StageCalledOff {
		if d.isNew(r.Since) {
			d.CalledOff = append(d.CalledOff, r)
		}
		return
	}
	if r.Stage == StageGone && d.isNew(r.Since) {
		d.Gone = append(d.Gone, r)
	}
	off, ended := r.Ended()
	if !ended || r.Stage.Hot() || !d.isNew(off.At) {
		return
	}
	d.Cooked = append(d.Cooked, r)
	if off.Outcome == Early {
		d.Short = append(d.Short, r)
	}
}

// stands looks at how old a run on the shelf is and will be.
func (d *Digest) stands(r Run) {
	limits := r.ShelfLimits()
	for _, l := range limits {
		noted := shelfTime.On(l.At.In(d.Now.Location()))
		if noted.After(d.Now) && noted.Before(d.until()) {
			d.Passing = append(d.Passing, Passing{Run: r, Limit: l})
		}
	}
	if !limits[len(limits)-1].At.After(d.Now) {
		d.Decide = append(d.Decide, r)
	}
	if r.Stage == StageCooling {
		d.Unmeasured = append(d.Unmeasured, r)
	}
}

// Empty reports whether there is nothing to say: what stands on the shelf as it did
// a week ago is no news.
func (d Digest) Empty() bool {
	return len(d.Cooked)+len(d.CalledOff)+len(d.Gone)+len(d.Passing)+len(d.Bookings)+len(d.Decide)+len(d.Unmeasured) == 0
}
